import type { RequestState } from './request-states';

/** What a press on the private page of a quote did, as its address keeps it. */
export const QUOTE_DONE = ['asked', 'answered', 'accepted', 'declined'] as const;
export type QuoteDone = (typeof QUOTE_DONE)[number];

export type QuoteDoneFacts = {
  state: RequestState;
  /** nobody has answered the customer's last message */
  hasLastWord: boolean;
};

const STILL: Record<QuoteDone, (facts: QuoteDoneFacts) => boolean> = {
  asked: ({ state }) => state === 'asked',
  answered: ({ hasLastWord }) => hasLastWord,
  accepted: ({ state }) => state === 'accepted',
  declined: ({ state }) => state === 'declined',
};

/**
 * What the page says was just done, or null where that is not true any more: people keep the address, and open it days later.
 *
 * stillDoneOnQuote('accepted', { state: 'booked', … }) -> null
 */
export function stillDoneOnQuote(said: unknown, facts: QuoteDoneFacts): QuoteDone | null {
  const done = QUOTE_DONE.find((each) => each === said);
  return done && STILL[done](facts) ? done : null;
}
