import { addDays, type Day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { type Tx, transaction } from '@/lib/db/transaction';
import { log } from '@/lib/log';
import { attempt, Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { DuePrice, LapseCall } from './due-price';
import { lapseStep } from './rules/lapse';
import { lapseOffer, remindOfOffer } from './write-lapse-of-offer';
import { lapseAskedQuote, remindOfAskedQuote } from './write-lapse-of-quote';

/** So many prices a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/**
 * What the passing of time does to prices that wait for an answer, those of jobs and those that were asked for: one
 * reminder some days before the last one, and the end after it.
 *
 * Two instances may go round at once, and a customer may answer meanwhile: each price is taken by a conditional update
 * in a transaction of its own, and whoever comes second changes nothing. A price that cannot be dealt with keeps no
 * other one waiting.
 */
export async function lapsePrices(now: Date): Promise<{ reminded: number; lapsed: number }> {
  const workshop = await readWorkshop();
  const today = dayInZone(now, workshop.timeZone);
  const done = { reminded: 0, lapsed: 0 };
  for (const price of await duePrices(today, workshop.remindDays)) {
    const step = lapseStep(
      {
        issuedOn: dayInZone(price.issuedAt, workshop.timeZone),
        validUntil: dayFromDate(price.validUntil),
        isReminded: price.remindedAt !== null,
      },
      { today, remindDays: workshop.remindDays },
    );
    if (step === null || !(await isTaken(price, step, { workshop, now }))) continue;
    if (step === 'lapse') done.lapsed += 1;
    else done.reminded += 1;
  }
  return done;
}

async function duePrices(today: Day, remindDays: number): Promise<DuePrice[]> {
  return db.quoteRevision.findMany({
    where: {
      state: 'sent',
      OR: [
        { validUntil: { lt: dayToDate(today) } },
        { remindedAt: null, validUntil: { lte: dayToDate(addDays(today, Math.max(0, remindDays))) } },
      ],
    },
    select: {
      id: true,
      revision: true,
      grossMinor: true,
      issuedAt: true,
      validUntil: true,
      remindedAt: true,
      quote: { select: { id: true, jobId: true } },
    },
    orderBy: { validUntil: 'asc' },
    take: MOST,
  });
}

/** True when the step was taken; false when somebody else was first, or when it failed and the next round tries again. */
async function isTaken(price: DuePrice, step: 'lapse' | 'remind', call: LapseCall): Promise<boolean> {
  try {
    const outcome = await attempt(() =>
      transaction((tx) => (step === 'lapse' ? lapse(tx, price, call) : remind(tx, price, call))),
    );
    return outcome.ok;
  } catch (error) {
    log.error('price-step-failed', { priceId: price.id }, error);
    return false;
  }
}

async function lapse(tx: Tx, price: DuePrice, call: LapseCall): Promise<void> {
  if (price.quote.jobId === null) await lapseAskedQuote(tx, price, call);
  else await lapseOffer(tx, price, price.quote.jobId, call);
}

async function remind(tx: Tx, price: DuePrice, call: LapseCall): Promise<void> {
  // The row decides: of two rounds the second finds it reminded of, and of a round and an answer the later one finds
  // it reminded of or answered.
  const { count } = await tx.quoteRevision.updateMany({
    where: { id: price.id, state: 'sent', remindedAt: null },
    data: { remindedAt: call.now },
  });
  if (count === 0) throw new Refusal('conflict', 'This price was answered or reminded of meanwhile.');
  if (price.quote.jobId === null) await remindOfAskedQuote(tx, price, call);
  else await remindOfOffer(tx, price, price.quote.jobId, call);
}
