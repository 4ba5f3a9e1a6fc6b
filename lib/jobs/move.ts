import { compareDays, type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { creditStanding } from '@/lib/invoices/write-credit';
import type { WrittenInvoice } from '@/lib/invoices/write-invoice';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import type { MailContent, MailRequest } from '@/lib/mail/messages';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { writePromiseMove } from '@/lib/promise/write-move';
import { agreedOf, offerOf } from '@/lib/quotes/rules/agreed';
import { isBookedAtQuote } from '@/lib/quotes/rules/asked-words';
import { isHeld } from '@/lib/quotes/rules/held-price';
import { costOfNoFacts, readCostOfNo } from '@/lib/quotes/stored-after-no';
import { requireHeldPrice } from '@/lib/quotes/stored-held-price';
import { priceFacts } from '@/lib/quotes/stored-offer-words';
import { readClaimAgain } from '@/lib/warranty/stored-claim-again';
import { closeClaim } from '@/lib/warranty/write-closed-claim';
import { readWorkshop } from '@/lib/workshop/records';
import type { Actor } from './actor';
import { factsOf, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { hasLeft, waitsForAddress, wasAway } from './rules/handover';
import { type MoveKey, moveOf, type StageMail } from './rules/stages';
import { recalledInUnit } from './stored-recall';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';
import { writeNotice } from './write-unclaimed';

/** Moves with facts of their own have their own use case; these need nothing but the table. */
export const PLAIN_MOVES = [
  'cancel',
  'assess',
  'ask-approval',
  'take-back-price',
  'start-bench',
  'parts-in',
  'prove',
  'fail-check',
  'pass-checks',
  'reopen-work',
  'return-unrepaired',
  'pack-unrepaired',
  'close',
  'set-aside',
  'take-up-again',
] as const satisfies readonly MoveKey[];
export type PlainMove = (typeof PLAIN_MOVES)[number];

export function isPlainMove(text: string): text is PlainMove {
  return (PLAIN_MOVES as readonly string[]).includes(text);
}

/** Moves that end the work on a unit, and make what was agreed for it due. */
const FINISHING: ReadonlySet<MoveKey> = new Set(['pass-checks', 'pack-unrepaired', 'return-unrepaired']);

/**
 * Takes one move of the table. Every need is checked on records read inside the transaction; staff name the version
 * they saw, so that of two who press at once the second gets a conflict.
 *
 * A customer's cancelling names none: it costs nothing, whatever was written on the job meanwhile. Cancelling twice is
 * not an error, since a tap on a weak signal is often sent again.
 */
export async function moveJob(o: {
  jobId: string;
  version?: number;
  move: PlainMove;
  note: string;
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (o.move === 'cancel' && o.actor.kind === 'customer' && job.stage === 'cancelled') return;
    if (o.version !== undefined && job.version !== o.version) {
      throw new Refusal('conflict', 'This job changed while you had it open. Nothing was moved.');
    }
    if (o.move === 'take-back-price' && o.note === '') {
      throw new Refusal('invalid', 'Say why, in words for the customer', 'note');
    }
    const workshop = await readWorkshop(tx);
    const { timeZone, locale } = workshop;
    const move = moveOf(o.move);
    const said = move.needs.some((need) => need === 'no-recalled-part' || need === 'not-left-before')
      ? { recalledParts: await recalledInUnit(job, tx) }
      : null;
    requireMove(job, o.move, o.actor, { today: dayInZone(o.now, timeZone), locale }, said);
    if (o.move === 'ask-approval') requireHeldPrice(job, { today: dayInZone(o.now, timeZone), locale });
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: job.version, stages: move.from },
      set: {
        ...(move.to === 'ready' && move.from.every((stage) => stage !== 'unclaimed')
          ? { readyAt: o.now }
          : {}),
        ...(o.move === 'reopen-work' ? { readyAt: null } : {}),
        ...(move.to === 'closed' ? { closedAt: o.now } : {}),
      },
      from: readStage(job.stage),
      to: move.to,
      event: { kind: 'moved', data: { move: o.move, note: o.note } },
    });
    // The work is done: what it waited for and has not taken, it went without.
    if (o.move === 'prove') await tx.awaitedPart.deleteMany({ where: { jobId: job.id } });
    if (o.move === 'take-back-price') await takeBackOffers(tx, job, o);
    if (o.move === 'reopen-work' && job.stage === 'ready') {
      await writePromiseMove(tx, { ...o, job, furtherDays: 0, waitedAs: 'ready', workshop });
    }
    if (move.to === 'cancelled') {
      // A claim whose unit is not sent in after all must not keep the next one from being opened.
      await closeClaim(tx, job, { postage: 0, now: o.now });
      await creditStanding(tx, { ...o, reason: 'The job was cancelled' });
    }
    const invoice = FINISHING.has(o.move) ? await issueForJob(tx, { ...o, jobId: job.id }) : null;
    const after = invoice || o.move === 'reopen-work' ? await readJob({ id: job.id }, tx) : job;
    if (o.move === 'take-up-again') await tx.unclaimedNotice.deleteMany({ where: { jobId: job.id } });
    if (o.move === 'set-aside') {
      await writeNotice(tx, { jobId: job.id, email: job.customer.email, notice: 1, workshop, now: o.now });
    } else if (move.mail && !isUntold(o.move, job))
      await queueStageMail(tx, after ?? job, move.mail, { ...o, invoice });
  });
}

/** Work that is opened again before the customer was told that the unit is ready is no news to them. */
function isUntold(move: PlainMove, job: JobRecord): boolean {
  return move === 'reopen-work' && readStage(job.stage) !== 'ready';
}

/**
 * A price that was taken back cannot be agreed to any more, however late the answer comes. The days it waited are put on
 * the promise, like those of one that is answered.
 */
async function takeBackOffers(tx: Tx, job: JobRecord, o: { actor: Actor; now: Date }): Promise<void> {
  await tx.quoteRevision.updateMany({
    where: { quote: { jobId: job.id }, state: 'sent' },
    data: { state: 'replaced' },
  });
  const workshop = await readWorkshop(tx);
  await writePromiseMove(tx, { job, furtherDays: 0, workshop, actor: o.actor, now: o.now });
}

type StageFacts = { note: string; now: Date; invoice: WrittenInvoice | null };

async function queueStageMail(tx: Tx, job: JobRecord, mail: StageMail, o: StageFacts): Promise<void> {
  const content = await stageMail(tx, job, mail, o);
  const request: MailRequest = { ...content, to: job.customer.email, jobId: job.id, now: o.now };
  await queueMail(tx, request);
}

/** The invoice issued with the move, or the one that was issued before and is still to be paid; without its day once that is past. */
function invoiceToName(job: JobRecord, o: { owed: number; issued: WrittenInvoice | null; today: Day }) {
  if (o.issued) return { number: o.issued.number, dueOn: o.issued.dueOn };
  const standing = o.owed > 0 ? job.invoices.findLast((paper) => paper.kind === 'invoice') : undefined;
  if (!standing) return undefined;
  const dueOn = dayFromDate(standing.dueOn);
  return { number: standing.number, ...(compareDays(dueOn, o.today) >= 0 && { dueOn }) };
}

/** Of a unit that its carrier brought back: what of it stands, and whether its customer still has to answer. */
function againFacts({ events, certificates }: JobRecord) {
  if (!hasLeft(events)) return {};
  return {
    isAgain: true,
    ...(certificates.length > 0 && { hasCertificate: true }),
    ...(waitsForAddress(events) && { asksAddress: true }),
  };
}

async function stageMail(tx: Tx, job: JobRecord, mail: StageMail, o: StageFacts): Promise<MailContent> {
  const workshop = await readWorkshop(tx);
  switch (mail) {
    case 'job-cancelled': {
      const { paid } = balanceOf(job);
      const isQuoted = isBookedAtQuote(job);
      const today = dayInZone(o.now, workshop.timeZone);
      const claimAgain = job.claim && (await readClaimAgain(job.claim, { workshop, today }, tx));
      return {
        template: mail,
        data: {
          reason: o.note,
          ...(paid > 0 && { refund: paid }),
          ...(isQuoted && { isQuoted }),
          ...(claimAgain && { claimAgain }),
        },
      };
    }
    case 'work-reopened': {
      const promisedOn = job.promisedOn && dayFromDate(job.promisedOn);
      const isAhead = promisedOn !== null && compareDays(promisedOn, dayInZone(o.now, workshop.timeZone)) > 0;
      const isAgain = wasAway(job.events);
      return {
        template: mail,
        data: { reason: o.note, ...(isAhead && { promisedOn }), ...(isAgain && { isAgain }) },
      };
    }
    case 'unit-ready': {
      const { owed, isOwedWaived } = factsOf(job);
      const today = dayInZone(o.now, workshop.timeZone);
      const invoice = invoiceToName(job, { owed, issued: o.invoice, today });
      const isWaived = owed > 0 && isOwedWaived === true;
      const data = {
        balance: owed,
        ...againFacts(job),
        ...(isWaived && { isWaived }),
        ...(invoice && { invoice }),
      };
      return { template: mail, data };
    }
    case 'approval-asked': {
      const offer = offerOf(job);
      const agreed = agreedOf(job);
      if (!offer) throw new Error('a changed price was asked for without an offer');
      return {
        template: mail,
        data: {
          revision: offer.revision,
          reason: offer.reason,
          previousGross: agreed?.grossMinor ?? 0,
          gross: offer.grossMinor,
          ...costOfNoFacts(readCostOfNo(job, workshop)),
          ...(offer.workingDays ? { furtherDays: offer.workingDays } : {}),
          validUntil: dayInZone(offer.validUntil, 'UTC'),
          ...priceFacts(job),
        },
      };
    }
    case 'price-taken-back': {
      const offer = offerOf(job);
      if (!offer) throw new Error('a price was taken back that does not wait');
      const validUntil = dayFromDate(offer.validUntil);
      const held = isHeld(validUntil, dayInZone(o.now, workshop.timeZone));
      return {
        template: mail,
        data: {
          revision: offer.revision,
          gross: offer.grossMinor,
          reason: o.note,
          ...(held && { heldUntil: validUntil }),
          ...priceFacts(job),
        },
      };
    }
    default:
      throw new Error(`the move's mail ${mail} is written by its own use case`);
  }
}
