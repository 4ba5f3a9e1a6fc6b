import { compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import type { RequestState } from '@/lib/quotes/rules/request-states';
import { type AnswerClock, type AnswerDue, answerDue } from './answer-due';

/** A quote that was asked for, as far as today's list goes. */
export type TodayQuote = {
  number: string;
  state: RequestState;
  /** the day it was asked for, or answered last by the customer */
  waitsSince: Day;
  /** last day of the price that waits for an answer */
  heldUntil: Day | null;
};

export type QuoteStep = 'answer-request' | 'lapses-soon' | 'not-booked';

export type QuoteRow<Q extends TodayQuote> = {
  quote: Q;
  step: QuoteStep;
  /** until when the customer was promised an answer; null where it waits on them */
  answer: AnswerDue | null;
  /** calendar days that its price is held from today on, today not counted; null where none waits */
  daysHeld: number | null;
};

export type QuoteLists<Q extends TodayQuote> = {
  /** requests that wait on us, the oldest first */
  onUs: QuoteRow<Q>[];
  /** prices that lapse within the days of the reminder, the next first, then what was accepted and not booked */
  onCustomer: QuoteRow<Q>[];
};

/** The states in which a quote may stand in one of today's lists. */
export const LISTED_STATES: readonly RequestState[] = ['asked', 'quoted', 'accepted'];

/**
 * Sorts the quotes that were asked for into today's lists; each is in one at most, a price that is held for longer in
 * none. With a reminder of 5 days a price held until Friday 11 December is listed from Sunday 6 December on.
 */
export function quoteLists<Q extends TodayQuote>(
  quotes: readonly Q[],
  o: AnswerClock & { remindDays: number },
): QuoteLists<Q> {
  const rows = quotes.flatMap((quote): QuoteRow<Q>[] => {
    const daysHeld = quote.heldUntil === null ? null : daysBetween(o.today, quote.heldUntil);
    switch (quote.state) {
      case 'asked':
        return [{ quote, step: 'answer-request', answer: answerDue(quote.waitsSince, o), daysHeld: null }];
      case 'quoted':
        return daysHeld !== null && daysHeld >= 0 && daysHeld <= o.remindDays
          ? [{ quote, step: 'lapses-soon', answer: null, daysHeld }]
          : [];
      case 'accepted':
        return [{ quote, step: 'not-booked', answer: null, daysHeld: null }];
      default:
        return [];
    }
  });
  const oldestFirst = rows.toSorted((a, b) => compareDays(a.quote.waitsSince, b.quote.waitsSince));
  const of = (step: QuoteStep) => oldestFirst.filter((row) => row.step === step);
  const lapsing = of('lapses-soon').toSorted((a, b) => (a.daysHeld ?? 0) - (b.daysHeld ?? 0));
  return { onUs: of('answer-request'), onCustomer: [...lapsing, ...of('not-booked')] };
}
