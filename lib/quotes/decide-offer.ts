import { compareDays, type Day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import { workingDaysBetween } from '@/lib/calendar/working';
import { type Tx, transaction } from '@/lib/db/transaction';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import type { Actor } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import { type JobRecord, readJob, readStage } from '@/lib/jobs/records';
import { answerMove } from '@/lib/jobs/rules/guards';
import { changedText } from '@/lib/jobs/rules/shown-terms';
import { moveOf } from '@/lib/jobs/rules/stages';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { writeUnderRepair } from '@/lib/jobs/write-under-repair';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writeFirstPromise } from '@/lib/promise/write-first';
import { writePromiseMove } from '@/lib/promise/write-move';
import { newestVersion } from '@/lib/warranty/records';
import { readCalendar, readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { termsId } from '@/lib/workshop/terms-id';
import { keepTerms } from '@/lib/workshop/write-terms';
import { feesAfterNo } from './rules/after-no';
import { agreedOf } from './rules/agreed';
import { withdrawUntil as lastDayToWithdraw, readWithdrawalRule } from './rules/withdrawal';
import { readLinesAfterNo } from './stored-after-no';
import { priceFacts, readOfferWords } from './stored-offer-words';
import { type StoredRevision, writeOwed } from './write-owed';

type Revision = NonNullable<JobRecord['quotes'][number]>['revisions'][number];

/**
 * The customer's yes or no to a changed price. The answer names the revision it was given on: if the workshop has
 * written another one meanwhile, nothing is decided and the customer sees the new price. Answering the same way twice
 * is not an error, since a tap on a weak signal is often sent again.
 *
 * A no to the rest of a claim of which something is covered leaves the agreed price as it is, and the covered part goes
 * on the bench. The answer says what the no came to.
 *
 * The clock of the promise stood still while the question waited: where work goes on, the promise moves by those days.
 */
export async function decideOffer(o: {
  jobId: string;
  revision: number;
  decision: 'accepted' | 'declined';
  /** on a yes: the customer asked for work to start before the right to withdraw ends */
  isStartAsked?: boolean;
  /** needed on the yes that makes the contract: the first one to a price of a job that staff opened, or of a claim */
  isTermsAccepted?: boolean;
  /** the terms that were linked beside that yes, by their key; absent where nobody read a page */
  shownTerms?: string | undefined;
  actor: Actor;
  now: Date;
}): Promise<'accepted' | 'declined' | 'rest-declined'> {
  return transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    const quote = job?.quotes[0];
    const offer = quote?.revisions.find((revision) => revision.revision === o.revision);
    if (!job || !quote || !offer) throw new Refusal('not-found', 'There is no such price to answer.');
    const key = answerMove(o.decision, factsOf(job));
    const taken = key === 'decline-the-rest' ? 'rest-declined' : o.decision;
    if (offer.state === o.decision) return taken;
    if (offer.state !== 'sent') throw new Refusal('conflict', 'This price was answered or replaced already.');
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    if (o.decision === 'accepted' && compareDays(today, dayFromDate(offer.validUntil)) > 0) {
      throw new Refusal('conflict', 'This price is no longer valid. We will write to you with a new one.');
    }
    const makesContract = o.decision === 'accepted' && !factsOf(job).isContractMade;
    // What was agreed to is written from the records, never taken from the form that was sent.
    const words = readOfferWords(job, offer, { workshop, today });
    const agreedText = o.decision === 'accepted' ? words.agreed : words.declined;
    if (makesContract && !o.isTermsAccepted) {
      throw new Refusal('invalid', 'Tick the box to agree to the terms', 'terms');
    }
    const stand = termsId(workshop.termsText);
    const changed = makesContract ? changedText(o.shownTerms ?? stand, stand) : '';
    if (changed !== '') throw new Refusal('conflict', `${changed} Nothing is agreed to yet.`, 'terms');
    const move = moveOf(key);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: job.version, stages: move.from },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'offer-decided', data: { revision: o.revision, decision: o.decision } },
    });
    // What is proved, certified and counted is the repair that was agreed to.
    const { repairId } = offer;
    const isOther = key === 'approve' && repairId !== null && repairId !== job.repair.id;
    const under = isOther ? await writeUnderRepair(tx, { ...o, job, repairId }) : job;
    const { isStartAllowed, withdrawUntil } = factsOf(job, today);
    let startAfter = isStartAllowed ? null : withdrawUntil;
    if (makesContract)
      startAfter = await makeContract(tx, { job: { ...job, ...under }, offer, workshop, ...o });
    else if (o.decision === 'accepted' && o.isStartAsked && job.withdrawUntil && !job.startRequestedAt) {
      await writeEvent(tx, {
        jobId: job.id,
        actor: o.actor,
        now: o.now,
        set: { startRequestedAt: o.now },
        event: { kind: 'start-requested', data: {} },
      });
      startAfter = null;
    }
    if (taken !== 'rest-declined') {
      await tx.quoteRevision.updateMany({
        where: { quoteId: quote.id, state: 'accepted' },
        data: { state: 'replaced' },
      });
    }
    await tx.quoteRevision.update({
      where: { id: offer.id },
      data: { state: o.decision, decidedAt: o.now, decidedBy: o.actor.kind, agreedText },
    });
    const agreed = await nowAgreed(tx, { taken, offer, job, quote, workshop, agreedText, ...o });
    // An invoice that was issued ahead is credited, and replaced by one over what is owed now.
    if (taken !== 'rest-declined' && job.invoices.length > 0) await issueForJob(tx, o);
    const waits =
      makesContract && startAfter ? await workingDaysUntil(tx, startAfter, { today, workshop }) : 0;
    const furtherDays = taken === 'accepted' ? (offer.workingDays ?? 0) + waits : 0;
    const promise =
      move.to === 'declined'
        ? null
        : await writePromiseMove(tx, { job, furtherDays, workshop, actor: o.actor, now: o.now });
    await queueMail(tx, {
      template: 'approval-recorded',
      data: {
        revision: o.revision,
        decision: taken,
        ...agreed,
        ...(await moneyFactsSince(tx, job)),
        ...(promise ? { promise } : {}),
        ...(makesContract ? { isFirst: true } : taken === 'accepted' ? priceFacts(job) : {}),
        ...(taken === 'accepted' && startAfter ? { startAfter } : {}),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
    return taken;
  });
}

type Contract = {
  job: JobRecord;
  offer: Revision;
  workshop: WorkshopCard;
  isStartAsked?: boolean;
  actor: Actor;
  now: Date;
};

/**
 * The first yes of a job that staff opened, or to a price on a claim that covers nothing, makes the contract: from now the terms
 * are agreed to, the days to withdraw run (Directive 2011/83/EU Art. 9(2)(a)), and a day is promised where none was. Gives
 * the day that work waits for, or null where it may begin at once.
 */
async function makeContract(tx: Tx, o: Contract): Promise<Day | null> {
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

type Answered = {
  taken: 'accepted' | 'declined' | 'rest-declined';
  offer: Revision;
  job: JobRecord;
  quote: { id: string; revisions: readonly StoredRevision[] };
  workshop: WorkshopCard;
  agreedText: string;
  actor: Actor;
  now: Date;
};

type NowAgreed = { gross: number; inspectionFee?: number };

/** What the customer pays after the answer, with tax, in minor units. */
async function nowAgreed(tx: Tx, o: Answered): Promise<NowAgreed> {
  switch (o.taken) {
    case 'accepted':
      return { gross: o.offer.grossMinor };
    case 'declined':
      return owedOnReturn(tx, o);
    case 'rest-declined': {
      const stands = agreedOf(o.job);
      return { gross: stands?.grossMinor ?? 0 };
    }
  }
}

/** After a no, the agreed price becomes the fees alone; a claim's unit goes back free. */
async function owedOnReturn(tx: Tx, o: Omit<Answered, 'taken' | 'offer'>): Promise<NowAgreed> {
  const lines = readLinesAfterNo(o.job, o.workshop);
  const { inspectionFee } = feesAfterNo(lines);
  const gross = await writeOwed(tx, {
    quote: o.quote,
    lines,
    reason: 'Returned unrepaired after the changed price was declined',
    agreedText: o.agreedText,
    by: o.actor.kind,
    today: dayInZone(o.now, o.workshop.timeZone),
    now: o.now,
  });
  return { gross, ...(inspectionFee > 0 ? { inspectionFee } : {}) };
}
