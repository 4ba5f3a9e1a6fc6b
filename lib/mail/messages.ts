import type { MailContent } from './rules/content';

export type { FactsOf, MailContent, MailTemplate } from './rules/content';

/** A message to be queued: to whom, about which job, when, and its content. */
export type MailRequest = { to: string; jobId: string | null; now: Date } & MailContent;

/**
 * Where a message stands. queued: waits for its turn. sending: a worker has it. sent: the mail server took it.
 * failed: given up, with the reason. kept: there is no mail server to hand it to; people read it here.
 */
export const mailStates = ['queued', 'sending', 'sent', 'failed', 'kept'] as const;
export type MailState = (typeof mailStates)[number];
