import { addDays, compareDays, type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { settleAnswered } from '@/lib/jobs/write-settled';
import { queueMail } from '@/lib/mail/queue';
import { formatMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { newestVersion } from '@/lib/warranty/records';
import { readHeldWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { heldNoOf, openRevision, type QuoteRecord, readQuote } from './records';
import { askedWords } from './rules/asked-words';
import { isHeld, mayReplace, validDaysProblem } from './rules/held-price';
import { isInspectionOnly } from './rules/inspection-fee';
import { OFFERED_KINDS, type QuoteLine, revisionTotals } from './rules/lines';
import { requestMove } from './rules/request-states';
import { type Conditions, readConditions } from './stored-conditions';
import { writeQuoteEvent } from './write-quote-event';
import { writeRevision } from './write-revision';

export type QuoteToSend = ByStaff & {
  quoteId: string;
  /** the version the writer saw */
  version: number;
  /** the repair of the catalogue whose cover and check sheet the work gets */
  repairId: string;
  lines: readonly QuoteLine[];
  /** what was found in what the customer sent */
  reason: string;
  proposal: string;
  workingDays: number;
  note: string;
  validDays: number;
  /** the customer asked for what a new revision changes */
  customerAsked?: boolean;
};

const ON_NO = 'Nothing is booked and nothing is owed.';

/**
 * Sends a price to the customer as the next revision of the quote, held for at least 30 calendar days.
 *
 * A price that is still held is a promise. Another one takes its place only when it is not higher and ends no sooner,
 * or when the customer asked for the change; who asked is kept in the history. One that was declined is held as well, since
 * the no may still become a yes. The replaced revision stays readable and
 * can no longer be accepted.
 *
 * The conditions beside the price (cover, fees, a unit to use meanwhile) are fixed here, when the customer can first read them,
 * so that the yes, the booking and the job get what was shown, whatever the catalogue and the settings say by then.
 */
export async function sendQuote(o: QuoteToSend): Promise<{ revision: number; gross: number }> {
  refuseBadTerms(o);
  return transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
    const quote = await readQuote({ id: o.quoteId }, tx);
    if (!quote) throw new Refusal('not-found', 'There is no such request.');
    const policyVersionId = await coverOfRepair(tx, o.repairId);
    const workshop = await readHeldWorkshop(tx);
    const isGross = workshop.pricesIncludeTax;
    const { gross } = revisionTotals(o.lines, isGross);
    const isInspection = isInspectionOnly(o);
    if (gross < 0) throw new Refusal('invalid', 'The price comes to less than nothing.', 'amount-0');
    const today = dayInZone(o.now, workshop.timeZone);
    const validUntil = addDays(today, o.validDays);
    refuseBrokenPromise(quote, { ...o, gross, today, validUntil });
    await tx.quoteRevision.updateMany({
      where: { quoteId: quote.id, state: 'sent' },
      data: { state: 'replaced' },
    });
    if (quote.revisions.length === 0 && quote.currency !== workshop.currency) {
      // Asked at the moment in which the currency changed.
      await tx.quote.update({
        where: { id: quote.id },
        data: { currency: workshop.currency },
        select: { id: true },
      });
    }
    const revision = 1 + Math.max(0, ...quote.revisions.map((each) => each.revision));
    await writeRevision(tx, {
      quoteId: quote.id,
      revision,
      state: 'sent',
      isGross,
      reason: o.reason,
      proposal: o.proposal,
      workingDays: o.workingDays,
      note: o.note,
      onYes: askedWords(isInspection, formatMoney(gross, workshop.currency, workshop.locale)).onYes,
      onNo: ON_NO,
      now: o.now,
      validUntil,
      lines: o.lines,
      conditions: conditionsOf(quote, { ...o, today, policyVersionId, workshop }),
    });
    await tx.quoteRequest.update({ where: { quoteId: quote.id }, data: { repairId: o.repairId } });
    const { from, to } = requestMove('send-quote');
    await writeQuoteEvent(tx, {
      quoteId: quote.id,
      actor: o.actor,
      now: o.now,
      event: { kind: 'sent', data: { revision, gross, validUntil, customerAsked: o.customerAsked ?? false } },
      expected: { version: o.version, states: from },
      to,
    });
    // The price answers what the customer wrote before it.
    await settleAnswered(tx, { ...o, about: { quoteId: quote.id } });
    await queueMail(tx, {
      template: 'quote-sent',
      data: {
        revision,
        gross,
        validUntil,
        workingDays: o.workingDays,
        ...(isInspection && { isInspection }),
      },
      to: quote.request.email,
      quoteId: quote.id,
      now: o.now,
    });
    return { revision, gross };
  });
}

function refuseBadTerms(o: QuoteToSend): void {
  if (o.lines.length === 0) throw new Refusal('invalid', 'Give at least one line', 'description-0');
  const strange = o.lines.findIndex((line) => !OFFERED_KINDS.some((kind) => kind === line.kind));
  if (strange >= 0) throw new Refusal('invalid', 'Choose another kind of line', `kind-${strange}`);
  const problem = validDaysProblem(o.validDays);
  if (problem) throw new Refusal('invalid', problem, 'validDays');
  if (o.workingDays < 1) throw new Refusal('invalid', 'Give one working day or more', 'workingDays');
}

/** The terms of cover that a repair has now, by their id. */
async function coverOfRepair(tx: Tx, repairId: string): Promise<string> {
  const repair = await tx.repair.findUnique({
    where: { id: repairId },
    select: {
      _count: { select: { sheets: true } },
      policy: { select: { versions: { orderBy: { version: 'desc' }, take: 1, select: { id: true } } } },
    },
  });
  if (!repair) throw new Refusal('invalid', 'Choose a repair of the catalogue', 'repairId');
  if (repair._count.sheets === 0) {
    throw new Refusal('invalid', 'This repair has no check sheet yet, so it cannot be proved', 'repairId');
  }
  return newestVersion(repair.policy).id;
}

type Sending = Pick<QuoteToSend, 'customerAsked' | 'repairId'> & {
  today: Day;
  policyVersionId: string;
  workshop: WorkshopCard;
};

/** Today's conditions, or those of a price that is still held: they are promised with it. */
function conditionsOf(quote: QuoteRecord, o: Sending): Conditions {
  const { workshop, policyVersionId } = o;
  const open = openRevision(quote) ?? heldNoOf(quote, o.today);
  if (open && !o.customerAsked && isHeld(dayFromDate(open.validUntil), o.today)) {
    const held = readConditions(open);
    return quote.request.repairId === o.repairId ? held : { ...held, policyVersionId };
  }
  return {
    policyVersionId,
    returnFeeMinor: workshop.returnFeeMinor,
    inspectionFeeMinor: workshop.inspectionFeeMinor,
    isInspectionFeeTakenOff: workshop.isInspectionFeeTakenOff,
    replacementText: workshop.replacementText,
  };
}

type NextOffer = Pick<QuoteToSend, 'customerAsked'> & {
  gross: number;
  today: Day;
  validUntil: Day;
};

function refuseBrokenPromise(quote: QuoteRecord, next: NextOffer): void {
  const open = openRevision(quote) ?? heldNoOf(quote, next.today);
  if (!open) return;
  const held = { gross: open.grossMinor, validUntil: dayFromDate(open.validUntil) };
  const customerAsked = next.customerAsked ?? false;
  if (!mayReplace(held, { ...next, customerAsked })) {
    throw new Refusal(
      'invalid',
      'The price you sent is still held, so a new one cannot be higher unless the customer asked for the change.',
      'customerAsked',
    );
  }
  if (isHeld(held.validUntil, next.today) && compareDays(next.validUntil, held.validUntil) < 0) {
    throw new Refusal('invalid', 'The price you sent is held for longer than this', 'validDays');
  }
}
