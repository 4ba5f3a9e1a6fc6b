import { type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { workingDaysBetween } from '@/lib/calendar/working';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { changedText } from '@/lib/jobs/rules/shown-terms';
import { writeEvent } from '@/lib/jobs/write-event';
import { writeUnderRepair } from '@/lib/jobs/write-under-repair';
import { Refusal } from '@/lib/outcome';
import { writeFirstPromise } from '@/lib/promise/write-first';
import { newestVersion } from '@/lib/warranty/records';
import { readCalendar, type WorkshopCard } from '@/lib/workshop/records';
import { termsId } from '@/lib/workshop/terms-id';
import { keepTerms } from '@/lib/workshop/write-terms';
import { withdrawUntil as lastDayToWithdraw, readWithdrawalRule } from './rules/withdrawal';

type Revision = NonNullable<JobRecord['quotes'][number]>['revisions'][number];

/** What a yes that makes the contract needs: the box that agrees to the terms, beside the terms that stand today. */
export function requireTerms(
  workshop: WorkshopCard,
  o: { isTermsAccepted?: boolean; shownTerms?: string | undefined },
): void {
  if (!o.isTermsAccepted) throw new Refusal('invalid', 'Tick the box to agree to the terms', 'terms');
  const stand = termsId(workshop.termsText);
  const changed = changedText(o.shownTerms ?? stand, stand);
  if (changed !== '') throw new Refusal('conflict', `${changed} Nothing is agreed to yet.`, 'terms');
}

type Yes = {
  job: JobRecord;
  offer: Revision;
  workshop: WorkshopCard;
  isStartAsked?: boolean;
  actor: Actor;
  now: Date;
};

/**
 * What a yes to a price brings beside the price: the repair that the job is put under, the contract where it makes one, and the customer's wish for an early start.
 * Gives the last day that work waits for, null where it may go on at once, and the working days until then by which a
 * contract made now moves the promise.
 */
export async function writeYes(tx: Tx, o: Yes): Promise<{ startAfter: Day | null; waits: number }> {
  const today = dayInZone(o.now, o.workshop.timeZone);
  const facts = factsOf(o.job, today);
  // What is proved, certified and counted is the repair that was agreed to.
  const { repairId } = o.offer;
  const isOther = repairId !== null && repairId !== o.job.repair.id;
  const under = isOther ? await writeUnderRepair(tx, { ...o, repairId }) : o.job;
  if (!facts.isContractMade) {
    const startAfter = await makeContract(tx, { ...o, job: { ...o.job, ...under } });
    return { startAfter, waits: startAfter ? await workingDaysUntil(tx, startAfter, { ...o, today }) : 0 };
  }
  if (o.isStartAsked && o.job.withdrawUntil && !o.job.startRequestedAt) {
    await writeEvent(tx, {
      jobId: o.job.id,
      actor: o.actor,
      now: o.now,
      set: { startRequestedAt: o.now },
      event: { kind: 'start-requested', data: {} },
    });
    return { startAfter: null, waits: 0 };
  }
  return { startAfter: facts.isStartAllowed ? null : facts.withdrawUntil, waits: 0 };
}

/**
 * The first yes of a job that staff opened, or to a price on a claim that covers nothing, makes the contract: from now the terms
 * are agreed to, the days to withdraw run (Directive 2011/83/EU Art. 9(2)(a)), and a day is promised where none was. Gives
 * the day that work waits for, or null where it may begin at once.
 */
async function makeContract(tx: Tx, o: Yes): Promise<Day | null> {
  const today = dayInZone(o.now, o.workshop.timeZone);
  const rule = readWithdrawalRule(o.workshop.withdrawalRule);
  const until = lastDayToWithdraw(today, rule, await readCalendar(o.workshop, today, tx));
  const isStartAsked = until !== null && o.isStartAsked === true;
  await tx.job.update({
    where: { id: o.job.id },
    data: {
      termsAcceptedAt: o.now,
      termsId: await keepTerms(tx, o.workshop, o.now),
      policyVersionId: newestVersion(o.job.repair.policy).id,
      returnFeeMinor: o.job.kind === 'claim' ? 0 : o.workshop.returnFeeMinor,
      withdrawUntil: until && dayToDate(until),
      startRequestedAt: isStartAsked ? o.now : null,
    },
  });
  const startsAfter = isStartAsked ? null : until;
  if (o.job.promisedOn === null)
    await writeFirstPromise(tx, { ...o, startsAfter, furtherDays: o.offer.workingDays ?? 0 });
  return startsAfter;
}

/** Days that work waits for the end of the right to withdraw; the promise moves by them. */
async function workingDaysUntil(
  tx: Tx,
  until: Day,
  o: { today: Day; workshop: WorkshopCard },
): Promise<number> {
  return workingDaysBetween(o.today, until, await readCalendar(o.workshop, o.today, tx));
}
