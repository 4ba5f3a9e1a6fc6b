import { dayInZone } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { readWorkshop } from '@/lib/workshop/records';
import { journalOf, withinMonth } from './journal';
import { isMonthOver } from './rules/journal';

export type AskedJournal = 'whole' | 'since';

/**
 * A month's journal for the bookkeeper, as CSV. Once the month is over it is noted as taken, and each payment keeps in which file it
 * was first: one that is entered later is then known to be in none, and comes with the file asked for as 'since'. That file is null where
 * there is nothing for it, and nothing is noted then.
 */
export async function takeJournal(o: {
  month: string;
  asked: AskedJournal;
  actor: Extract<Actor, { id: string }>;
  now: Date;
}): Promise<string | null> {
  const { timeZone } = await readWorkshop();
  if (!isMonthOver(o.month, dayInZone(o.now, timeZone)))
    return o.asked === 'whole' ? journalOf(o.month, timeZone) : null;
  const takingId = await transaction((tx) => writeTaking(tx, o));
  if (takingId === null) return null;
  return journalOf(
    o.month,
    timeZone,
    o.asked === 'whole' ? { part: 'whole', isTaken: true } : { part: 'since', takingId },
  );
}

/** Two who take it at once wait for each other at the payments' rows: each payment is in one file of 'since'. */
async function writeTaking(
  tx: Tx,
  o: { month: string; asked: AskedJournal; actor: { id: string }; now: Date },
): Promise<string | null> {
  const isTaken = (await tx.journalTaking.count({ where: { month: o.month } })) > 0;
  const entered = { receivedOn: withinMonth(o.month), takingId: null };
  if (o.asked === 'since' && (!isTaken || (await tx.payment.count({ where: entered })) === 0)) return null;
  const { id } = await tx.journalTaking.create({
    data: { month: o.month, at: o.now, userId: o.actor.id },
    select: { id: true },
  });
  await tx.payment.updateMany({ where: entered, data: { takingId: id } });
  return id;
}
