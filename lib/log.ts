import pino from 'pino';
import { config } from '@/lib/config';
import type { Level, LogEvent } from './log/events';
import { type Fault, faultOf } from './log/fault';
import { type LogFields, readFields } from './log/fields';
import { requestIdNow } from './log/request';
import { terminal } from './log/terminal';
import { happenings } from './metrics/counters';

export { requestIdNow };

/**
 * The one way to write to the log: what happened, and fields whose shapes admit ids, codes, counts and nothing a person
 * could be known by (lib/log/fields.ts). `fault` is an error of which its class, code and places in the code are kept;
 * its message is not, since messages of databases and mail servers repeat what they were given.
 */
export const log = {
  info: (event: LogEvent, fields: LogFields = {}, fault?: unknown) => write('info', event, fields, fault),
  warn: (event: LogEvent, fields: LogFields = {}, fault?: unknown) => write('warn', event, fields, fault),
  error: (event: LogEvent, fields: LogFields = {}, fault?: unknown) => write('error', event, fields, fault),
};

const levels: readonly Level[] = ['error', 'warn', 'info'];

function write(level: Level, event: LogEvent, fields: LogFields, fault?: unknown): void {
  happenings().inc({ event });
  if (levels.indexOf(level) > levels.indexOf(config.logLevel)) return;
  const requestId = requestIdNow();
  const line = {
    event,
    ...readFields({ ...(requestId && { requestId }), ...fields }),
    ...(fault !== undefined && { fault: faultOf(fault) }),
  };
  if (config.logFormat === 'json') json()[level](line);
  else terminal()[level](asLine(line));
}

function asLine({ event, fault, ...fields }: { event: string; fault?: Fault }): string {
  const told = Object.entries(fields).map(([name, value]) => `${name}=${value}`);
  const failed = fault ? [fault.name, fault.code, ...fault.at.slice(0, 1)].filter(Boolean) : [];
  return [`${event}:`, ...told, ...failed].join(' ');
}

let opened: pino.Logger | undefined;

function json(): pino.Logger {
  // Written at once: a process that ends after its last line must not take that line with it.
  opened ??= pino(
    {
      base: { pid: process.pid, ...(config.hasPages ? { port: config.port } : { part: 'worker' }) },
      level: config.logLevel,
      timestamp: pino.stdTimeFunctions.isoTime,
      formatters: { level: (label) => ({ level: label }) },
    },
    pino.destination({ dest: 1, sync: true }),
  );
  return opened;
}
