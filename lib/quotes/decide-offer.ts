import { writeBesides } from '@/lib/bench/write-besides';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { type Actor, type AnsweredBy, answerer, requireTold } from '@/lib/jobs/actor';
import { factsOf, requireMove } from '@/lib/jobs/facts';
import { type JobRecord, readJob, readStage } from '@/lib/jobs/records';
import { answerMove, lateAnswerMove } from '@/lib/jobs/rules/guards';
import { isPromisedAnew } from '@/lib/jobs/rules/promise-to-come';
import { type MoveKey, moveOf } from '@/lib/jobs/rules/stages';
import { heardOn, toldText } from '@/lib/jobs/rules/told';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { settleTold } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writePromiseMove } from '@/lib/promise/write-move';
import { readWorkshop } from '@/lib/workshop/records';
import { yesAfterNo } from './rules/held-no';
import { isHeld } from './rules/held-price';
import { lapsedPrice } from './rules/lapsed-price';
import { priceFacts, readOfferWords } from './stored-offer-words';
import { writeAnswer } from './write-answer';
import { requireTerms } from './write-contract';
import { isForOther, writeYes } from './write-yes';

/**
 * The customer's yes or no to a changed price. The answer names the revision it was given on: if the workshop has
 * written another one meanwhile, nothing is decided and the customer sees the new price. Answering the same way twice
 * is not an error, since a tap on a weak signal is often sent again.
 *
 * A no to the rest of a claim of which something is covered leaves the agreed price as it is, and the covered part goes
 * on the bench. The answer says what the no came to.
 *
 * The clock of the promise stood still while the question waited: where work goes on, the promise moves by those days. The day of a
 * claim that covers nothing was called off with its ruling: a yes gives a new one.
 *
 * An answer that was told to staff is judged by its own day, and kept as told. One that came while the price was held is written down
 * after it lapsed too, as long as nothing has overtaken it (rules/lapsed-price.ts): what the lapse did is put right; a job that waits for
 * a part waits on, unless the yes is to another repair. A yes that makes
 * the contract is not among them: the terms and the right to withdraw are agreed to and told on the customer's page (Directive
 * 2011/83/EU Art. 6, 8).
 *
 * Staff may be sending the unit back, or writing another price, at the same moment: the version of the job decides, and whoever comes
 * second sees what changed.
 */
export async function decideOffer(
  o: {
    jobId: string;
    revision: number;
    decision: 'accepted' | 'declined';
    /** on a yes: the customer asked for work to start before the right to withdraw ends */
    isStartAsked?: boolean;
    /** needed on the yes that makes the contract: the first one to a price of a job that staff opened, or of a claim */
    isTermsAccepted?: boolean;
    /** the terms that were linked beside that yes, by their key; absent where nobody read a page */
    shownTerms?: string | undefined;
    now: Date;
  } & AnsweredBy,
): Promise<'accepted' | 'declined' | 'rest-declined'> {
  return transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    const quote = job?.quotes[0];
    const offer = quote?.revisions.find((revision) => revision.revision === o.revision);
    if (!job || !quote || !offer) throw new Refusal('not-found', 'There is no such price to answer.');
    const facts = factsOf(job);
    const taken = answerMove(o.decision, facts) === 'decline-the-rest' ? 'rest-declined' : o.decision;
    const isTakenBack = yesAfterNo(job.events, { no: o.revision }) !== null;
    if (offer.state === o.decision && !isTakenBack) return taken;
    const isLate = o.told !== undefined && offer.state === 'lapsed';
    const isOtherRepair = isForOther(job, offer);
    const key = isLate ? lateAnswerMove(o.decision, facts, { isOtherRepair }) : answerMove(o.decision, facts);
    if (isLate) requireLate(job, offer, key, o.actor);
    else if (offer.state !== 'sent')
      throw new Refusal('conflict', 'This price was answered or replaced already.');
    const workshop = await readWorkshop(tx);
    const { locale, timeZone } = workshop;
    const today = dayInZone(o.now, timeZone);
    const validUntil = dayFromDate(offer.validUntil);
    const { actor, by, told } = answerer(o);
    const since = dayInZone(offer.issuedAt, timeZone);
    const until = isLate ? validUntil : undefined;
    requireTold(o, { version: job.version, since, until, today, locale });
    if (o.decision === 'accepted' && !isHeld(validUntil, told?.on ?? today)) {
      throw new Refusal('conflict', 'This price is no longer valid. We will write to you with a new one.');
    }
    const makesContract = o.decision === 'accepted' && !facts.isContractMade;
    // What was agreed to is written from the records, never taken from the form that was sent.
    const words = readOfferWords(job, offer, { workshop, today });
    const answer = o.decision === 'accepted' ? words.agreed : words.declined;
    const agreedText = told ? toldText(told, answer, locale) : answer;
    if (makesContract) requireTerms(workshop, o);
    const move = moveOf(key);
    const stage = readStage(job.stage);
    await writeEvent(tx, {
      jobId: job.id,
      actor,
      now: o.now,
      expected: { version: job.version, stages: move.from },
      // It is worked on again.
      ...(stage === 'ready' && { set: { readyAt: null } }),
      from: stage,
      to: move.to,
      event: {
        kind: 'offer-decided',
        data: { revision: o.revision, decision: o.decision, ...(told && { told }) },
      },
    });
    // On the bench, where a yes after all leads too, what a job waited for counts as come: here it has not.
    if (stage === 'awaiting-parts' && move.to !== stage)
      await tx.awaitedPart.deleteMany({ where: { jobId: job.id } });
    const yes =
      o.decision === 'accepted'
        ? await writeYes(tx, { ...o, job, offer, workshop, actor })
        : { startAfter: null, waits: 0 };
    const agreed = await writeAnswer(tx, {
      ...{ taken, offer, job, quote, workshop, agreedText, by },
      ...{ jobId: job.id, decision: o.decision, actor, now: o.now },
    });
    await writeBesides(tx, { jobId: job.id, actor, now: o.now });
    const furtherDays = taken === 'accepted' ? (offer.workingDays ?? 0) + yes.waits : 0;
    const promise =
      move.to === 'declined' || isPromisedAnew(facts)
        ? null
        : await writePromiseMove(tx, {
            ...{ job, furtherDays, workshop, actor, now: o.now },
            ...(stage === 'ready'
              ? { waitedAs: stage }
              : isLate
                ? { late: { heardOn: (told && heardOn(told)) ?? null } }
                : { endedOn: (told && heardOn(told)) ?? today }),
          });
    await settleTold(tx, o);
    await queueMail(tx, {
      template: 'approval-recorded',
      data: {
        revision: o.revision,
        decision: taken,
        ...agreed,
        ...(await moneyFactsSince(tx, job)),
        ...(promise ? { promise } : {}),
        ...(told && { told }),
        ...(isLate && { hadLapsed: true }),
        ...(stage === 'ready' && { wasReady: true }),
        ...(move.to === 'awaiting-parts' && { waitsForPart: true }),
        ...(makesContract ? { isFirst: true } : taken === 'accepted' ? priceFacts(job) : {}),
        ...(yes.startAfter ? { startAfter: yes.startAfter } : {}),
        ...(move.to === 'declined' && isHeld(validUntil, today) && { yesUntil: validUntil }),
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
    return taken;
  });
}

/** Throws where an answer that came while its price was held has been overtaken since the price lapsed. */
function requireLate(job: JobRecord, offer: { revision: number }, key: MoveKey, actor: Actor): void {
  if (lapsedPrice(job.quotes[0]?.revisions ?? [], job.events)?.revision !== offer.revision) {
    throw new Refusal('conflict', 'This price lapsed, and the job has gone on since. Ask for a new one.');
  }
  if (key === 'approve-late' && !factsOf(job).isContractMade) {
    throw new Refusal(
      'invalid',
      'This yes would make the contract, which the customer gives on their page: ask for the price again.',
      'answer',
    );
  }
  requireMove(job, key, actor);
}
