import { dayInZone } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { readWorkshop } from '@/lib/workshop/records';
import { type JournalPart, journalOf, withinMonth } from './journal';
import { isMonthOver } from './rules/journal';
import { findSinceFile } from './since-files';

/** All of a month; what was entered since it was taken; or again what one taking had of that, by its id. */
export type AskedJournal = 'whole' | 'since' | { again: string };

/**
 * A month's journal for the bookkeeper, as CSV. Once the month is over its first one is noted as taken, and each payment keeps in which
 * file it was first: one that is entered later is then known to be in none, and comes with the file asked for as 'since'. Whoever takes
 * the whole month again gets every row, and nothing is noted: that one may be for nobody but them.
 *
 * A file may not arrive, so that each can be had again: 'since' gives the newest one where nothing is left for another. Null where there
 * is none.
 */
export async function takeJournal(
  o: ByStaff & { month: string; asked: AskedJournal },
): Promise<string | null> {
  const { timeZone } = await readWorkshop();
  const { asked } = o;
  if (typeof asked === 'object') {
    const takingId = await findSinceFile({ month: o.month, id: asked.again });
    return takingId && journalOf(o.month, timeZone, { part: 'since', takingId });
  }
  if (!isMonthOver(o.month, dayInZone(o.now, timeZone)))
    return asked === 'whole' ? journalOf(o.month, timeZone) : null;
  const part = await transaction((tx) => writePart(tx, { ...o, asked }));
  return part && journalOf(o.month, timeZone, part);
}

type Taken = { month: string; asked: 'whole' | 'since'; actor: { id: string }; now: Date };

async function writePart(tx: Tx, o: Taken): Promise<JournalPart | null> {
  const isTaken = (await tx.journalTaking.count({ where: { month: o.month } })) > 0;
  if (o.asked === 'whole')
    return isTaken || !(await writeTaking(tx, o)) ? { part: 'whole' } : { part: 'whole', isTaken: true };
  const takingId =
    (isTaken ? await writeTaking(tx, o) : null) ?? (await findSinceFile({ month: o.month }, tx));
  return takingId === null ? null : { part: 'since', takingId };
}

/**
 * Notes a file with the payments that none had; null, and nothing is noted, where the month was taken and has no such payment. Two who
 * take it at once wait for each other at the payments' rows, so that each payment is in one file.
 */
async function writeTaking(tx: Tx, o: Taken): Promise<string | null> {
  const { id } = await tx.journalTaking.create({
    data: { month: o.month, at: o.now, userId: o.actor.id },
    select: { id: true },
  });
  const { count } = await tx.payment.updateMany({
    where: { receivedOn: withinMonth(o.month), takingId: null },
    data: { takingId: id },
  });
  const hasOther = await tx.journalTaking.count({ where: { month: o.month, id: { not: id } } });
  if (count > 0 || hasOther === 0) return id;
  await tx.journalTaking.delete({ where: { id }, select: { id: true } });
  return null;
}
