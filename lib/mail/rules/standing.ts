/**
 * Where a message stands. queued: waits for its turn. sending: a worker has it. sent: the mail server took it.
 * failed: given up, with the reason. kept: there is no mail server to hand it to; people read it here.
 */
export const mailStates = ['queued', 'sending', 'sent', 'failed', 'kept'] as const;
export type MailState = (typeof mailStates)[number];

/** What of a message says where it stands. */
export type MailFacts = { state: MailState; bouncedAt: Date | null };

/** Whether a message did not reach its reader: given up, kept for want of a mail server, or come back after it left. */
export function isInTrouble({ state, bouncedAt }: MailFacts): boolean {
  return state === 'failed' || state === 'kept' || (state === 'sent' && bouncedAt !== null);
}

/**
 * Whether a message can be sent again by hand: what is in trouble, and what waits, which then does not wait for its next try.
 * What has left and did not come back cannot, nor what is leaving now.
 */
export function mayGoAgain(mail: MailFacts): boolean {
  return mail.state === 'queued' || isInTrouble(mail);
}
