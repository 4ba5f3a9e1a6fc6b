import type { MailContent } from './rules/content';

export type { FactsOf, MailContent, MailTemplate } from './rules/content';

/** A message to be queued: to whom, about which job or quote, when, and its content. */
export type MailRequest = { to: string; now: Date } & MailSubject & MailContent;

/** What a message is about: a job, or a quote that has none yet. */
export type MailSubject = { jobId: string | null; quoteId?: never } | { jobId?: never; quoteId: string };
