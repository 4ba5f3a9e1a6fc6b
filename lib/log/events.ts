/** What can happen that a log tells and a metric counts. A new happening is named here; there is no free text. */
export const logEvents = [
  'backup-failed',
  'backup-file-changed',
  'backup-file-missing',
  'backup-made',
  'clock-failed',
  'clock-part-failed',
  'clock-round',
  'console',
  'mail-failed',
  'mail-kept',
  'mail-queue-failed',
  'mail-recovered',
  'mail-recovery-failed',
  'mail-sent',
  'mail-try-failed',
  'mail-waits',
  'price-step-failed',
  'request',
  'request-failed',
  'second-step',
  'sign-in',
  'started',
  'stop-failed',
  'stopped',
  'stopping',
  'transaction-again',
  'transaction-late',
] as const;

export type LogEvent = (typeof logEvents)[number];
export type Level = 'info' | 'warn' | 'error';
