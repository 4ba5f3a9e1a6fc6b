import { type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import { workingDaysBetween } from '@/lib/calendar/working';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { isPromisedAnew } from '@/lib/jobs/rules/promise-to-come';
import { changedText } from '@/lib/jobs/rules/shown-terms';
import type { Told } from '@/lib/jobs/rules/told';
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
  o: { isTermsAccepted?: boolean; shownTerms?: string | undefined; told?: Told },
): void {
  if (o.told) throw new Refusal('invalid', ON_THEIR_PAGE, 'answer');
  if (!o.isTermsAccepted) throw new Refusal('invalid', 'Tick the box to agree to the terms', 'terms');
  const stand = termsId(workshop.termsText);
  const changed = changedText(o.shownTerms ?? stand, stand);
  if (changed !== '') throw new Refusal('conflict', `${changed} Nothing is agreed to yet.`, 'terms');
}

const ON_THEIR_PAGE =
  'This yes makes the contract, so the customer gives it on their page, where the terms are agreed to. Ask them to press it there.';

export type Yes = {
  job: JobRecord;
  offer: Revision;
  workshop: WorkshopCard;
  isStartAsked?: boolean;
  actor: Actor;
  now: Date;
};

/**
 * The first yes of a job that staff opened, or to a price on a claim that covers nothing, makes the contract, and so does one after a
 * withdrawal, which ended the contract before: from now the terms
 * are agreed to, the days to withdraw run (Directive 2011/83/EU Art. 9(2)(a)), and a day is promised where none was, or the claim's was called off. Gives
 * the last day that work waits for, null where it may begin at once, and the working days until then, by which the promise moves.
 */
export async function writeContract(tx: Tx, o: Yes): Promise<{ startAfter: Day | null; waits: number }> {
  const today = dayInZone(o.now, o.workshop.timeZone);
  const rule = readWithdrawalRule(o.workshop.withdrawalRule);
  const calendar = await readCalendar(o.workshop, today, tx);
  const until = lastDayToWithdraw(today, rule, calendar);
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
      // A claim that was ruled on anew after a withdrawal: this is another contract.
      withdrawnAt: null,
    },
  });
  const startAfter = isStartAsked ? null : until;
  if (o.job.promisedOn === null || isPromisedAnew(factsOf(o.job)))
    await writeFirstPromise(tx, { ...o, startsAfter: startAfter, furtherDays: o.offer.workingDays ?? 0 });
  return { startAfter, waits: startAfter ? workingDaysBetween(today, startAfter, calendar) : 0 };
}
