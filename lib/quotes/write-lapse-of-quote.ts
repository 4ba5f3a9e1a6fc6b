import { dayFromDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import type { DuePrice, LapseCall } from './due-price';
import { type QuoteRecord, readQuote } from './records';
import { isInspectionOnly } from './rules/inspection-fee';
import { requestMove } from './rules/request-states';
import { writeQuoteEvent } from './write-quote-event';

const CLOCK: Actor = { kind: 'clock' };

/**
 * Ends a price that was asked for. The quote's row decides between the clock and an answer: whoever finds another state
 * than quoted changes nothing.
 */
export async function lapseAskedQuote(tx: Tx, price: DuePrice, call: LapseCall): Promise<void> {
  const quote = await quoteOf(tx, price);
  const { from, to } = requestMove('lapse');
  await writeQuoteEvent(tx, {
    quoteId: quote.id,
    actor: CLOCK,
    now: call.now,
    expected: { states: from },
    to,
    event: { kind: 'lapsed', data: { revision: price.revision } },
  });
  const { count } = await tx.quoteRevision.updateMany({
    where: { id: price.id, state: 'sent' },
    data: { state: 'lapsed' },
  });
  if (count === 0) throw new Refusal('conflict', 'This price was answered or replaced already.');
  await queueMail(tx, {
    template: 'quote-lapsed',
    data: {
      revision: price.revision,
      validUntil: dayFromDate(price.validUntil),
      ...(isForInspection(quote, price) && { isInspection: true }),
    },
    to: quote.request.email,
    quoteId: quote.id,
    now: call.now,
  });
}

/** Reminds of a price that was asked for and not answered yet. */
export async function remindOfAskedQuote(tx: Tx, price: DuePrice, call: LapseCall): Promise<void> {
  const quote = await quoteOf(tx, price);
  const isInspection = isForInspection(quote, price);
  await writeQuoteEvent(tx, {
    quoteId: quote.id,
    actor: CLOCK,
    now: call.now,
    expected: { states: requestMove('lapse').from },
    event: { kind: 'reminded', data: { revision: price.revision } },
  });
  await queueMail(tx, {
    template: 'quote-reminder',
    data: {
      revision: price.revision,
      gross: price.grossMinor,
      validUntil: dayFromDate(price.validUntil),
      ...(isInspection && { isInspection }),
    },
    to: quote.request.email,
    quoteId: quote.id,
    now: call.now,
  });
}

function isForInspection(quote: QuoteRecord, price: DuePrice): boolean {
  return quote.revisions.some((each) => each.id === price.id && isInspectionOnly(each));
}

async function quoteOf(tx: Tx, price: DuePrice): Promise<QuoteRecord> {
  const quote = await readQuote({ id: price.quote.id }, tx);
  if (!quote) throw new Error('a price belongs to a quote that nobody asked for');
  return quote;
}
