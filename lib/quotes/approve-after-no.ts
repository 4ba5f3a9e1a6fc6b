import { writeBesides } from '@/lib/bench/write-besides';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { moneyFactsSince } from '@/lib/invoices/stored-replaced';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { type AnsweredBy, answerer, requireTold } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import { readJob, readStage } from '@/lib/jobs/records';
import { mayMove } from '@/lib/jobs/rules/guards';
import { isPromisedAnew } from '@/lib/jobs/rules/promise-to-come';
import { moveOf } from '@/lib/jobs/rules/stages';
import { heardOn, toldText } from '@/lib/jobs/rules/told';
import { writeEvent } from '@/lib/jobs/write-event';
import { lockJob } from '@/lib/jobs/write-lock';
import { settleTold } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writePromiseMove } from '@/lib/promise/write-move';
import { readWorkshop } from '@/lib/workshop/records';
import { agreedOf } from './rules/agreed';
import { toldNo, yesAfterNo } from './rules/held-no';
import { didLapse } from './rules/lapsed-price';
import { heldNoOfJob, isNoAfterInspection } from './stored-held-no';
import { readLine } from './stored-lines';
import { readYesAfterNoWords } from './stored-offer-words';
import { requireTerms } from './write-contract';
import { writeRevision } from './write-revision';
import { writeYes } from './write-yes';

const NOT_OPEN =
  'That price is not held any more, or your unit is packed already. Write to us below, and we answer what can be done.';

/**
 * The customer who said no to a changed price says yes after all: as long as it is held and the unit is not packed. The no
 * stays on record with its words, so the yes is kept with a revision of its own, the same price again; what was owed for the
 * return is replaced by it, on an invoice too. Pressed twice it is one yes.
 *
 * The promise moves by the days from the question to this yes, since all that time we waited for the customer. A yes that was told
 * to staff is judged by its own day. Where the price had lapsed before the no was written down, the lapse put those days on already:
 * they are counted again by the day of the yes. One in a letter is known of only now, and was waited for from that no on.
 */
export async function approveAfterNo(
  o: {
    jobId: string;
    /** the one that was declined */
    revision: number;
    isStartAsked?: boolean;
    /** needed where this yes makes the contract */
    isTermsAccepted?: boolean;
    shownTerms?: string | undefined;
    now: Date;
  } & AnsweredBy,
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    const quote = job?.quotes[0];
    if (!job || !quote) throw new Refusal('not-found', 'There is no such price to answer.');
    const turned = yesAfterNo(job.events, { no: o.revision });
    if (turned !== null && turned === agreedOf(job)?.revision) return;
    const workshop = await readWorkshop(tx);
    const { locale, timeZone } = workshop;
    const today = dayInZone(o.now, timeZone);
    const { actor, by, told } = answerer(o);
    const answeredOn = told?.on ?? today;
    const facts = factsOf(job, answeredOn);
    const declined = heldNoOfJob(job, answeredOn);
    const move = moveOf('approve-after-no');
    if (declined?.revision !== o.revision || !mayMove('approve-after-no', facts, actor.kind).allowed) {
      throw new Refusal('conflict', NOT_OPEN);
    }
    // A no that was told may have been written down after the yes was.
    const since =
      toldNo(job.events, { no: o.revision })?.on ??
      dayInZone(declined.decidedAt ?? declined.issuedAt, timeZone);
    requireTold(o, { version: job.version, since, today, locale });
    const makesContract = !facts.isContractMade;
    if (makesContract) requireTerms(workshop, o);
    const { agreed } = readYesAfterNoWords(job, declined, { workshop, today });
    const agreedText = told ? toldText(told, agreed, locale) : agreed;
    const revision = 1 + Math.max(...quote.revisions.map((each) => each.revision));
    await writeEvent(tx, {
      jobId: job.id,
      actor,
      now: o.now,
      expected: { version: job.version, stages: move.from },
      from: readStage(job.stage),
      to: move.to,
      event: {
        kind: 'offer-decided',
        data: { revision, decision: 'accepted', afterNoTo: o.revision, ...(told && { told }) },
      },
    });
    const { startAfter, waits } = await writeYes(tx, {
      ...{ job, offer: declined, workshop, actor, now: o.now },
      ...(o.isStartAsked && { isStartAsked: true }),
    });
    await tx.quoteRevision.updateMany({
      where: { quoteId: quote.id, state: 'accepted' },
      data: { state: 'replaced' },
    });
    const { isGross, reason, onYes, onNo, workingDays, repairId, isInspectionFeeTakenOff } = declined;
    const gross = await writeRevision(tx, {
      ...{ quoteId: quote.id, revision, isGross, reason, onYes, onNo, workingDays, repairId },
      state: 'accepted',
      // It is the price that was sent then.
      now: declined.issuedAt,
      validUntil: dayFromDate(declined.validUntil),
      lines: declined.lines.map(readLine),
      conditions: { isInspectionFeeTakenOff },
      decided: { at: o.now, by, agreedText },
    });
    await writeBesides(tx, { jobId: job.id, actor, now: o.now });
    if (job.invoices.length > 0) await issueForJob(tx, { jobId: job.id, actor, now: o.now });
    const heard = (told && heardOn(told)) ?? null;
    const furtherDays = (workingDays ?? 0) + waits;
    const promise = isPromisedAnew(facts)
      ? null
      : await writePromiseMove(tx, {
          ...{ job, furtherDays, workshop, actor, now: o.now },
          ...(!didLapse(job.events, o)
            ? { endedOn: heard ?? today }
            : heard
              ? { late: { heardOn: heard } }
              : { waitedAs: 'declined' }),
        });
    await settleTold(tx, o);
    await queueMail(tx, {
      template: 'approval-recorded',
      data: {
        revision,
        decision: 'accepted',
        gross,
        ...(await moneyFactsSince(tx, job)),
        ...(promise && { promise }),
        ...(told && { told }),
        ...(makesContract
          ? { isFirst: true }
          : isNoAfterInspection(job, declined) && { isAfterInspection: true }),
        ...(startAfter && { startAfter }),
        afterNoTo: o.revision,
      },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
