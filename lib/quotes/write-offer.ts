import { addDays, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { type Tx, transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { heldPrice } from '@/lib/jobs/rules/asked-price';
import { hasLeft } from '@/lib/jobs/rules/handover';
import { moveOf } from '@/lib/jobs/rules/stages';
import { namesOldAlone, UNDER_REPAIR_REASONS } from '@/lib/jobs/rules/under-repair';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { isCoveredAtLeastPartly } from '@/lib/warranty/rules/ruling';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { readWorkshop } from '@/lib/workshop/records';
import { agreedOf } from './rules/agreed';
import { heldSentence, mayReplace } from './rules/held-price';
import { withInspectionFee } from './rules/inspection-fee';
import { type QuoteLine, splitCovered } from './rules/lines';
import { linesKept } from './rules/tax-mode';
import { readTakesFeeOff } from './stored-conditions';
import { readLine } from './stored-lines';
import { writeRevision } from './write-revision';

/**
 * Writes a changed price as the next revision of the job's quote. It is not sent yet: asking for approval is its own
 * move. An offer that was written and not answered is replaced, so that only one is ever open.
 *
 * On a claim there is no price before the ruling, and what is covered is in every price by itself: the lines given are
 * what the customer would pay beside it. So is an inspection fee that was agreed to, with the line that takes it off
 * where the workshop does so.
 *
 * A price that the customer was asked about and has not answered is a promise to its last day, though it was taken back: a
 * higher one takes its place only for a change they asked for, or a fault that was found since.
 *
 * A price for another repair of the same model puts the job under it with the customer's yes. What is covered on a claim is
 * proved on its own sheet, so that the rest beside it is priced under the same repair.
 */
export async function writeOffer(
  o: OnJob & {
    lines: readonly QuoteLine[];
    reason: string;
    onYes: string;
    onNo: string;
    /** working days that the changed repair takes beside those promised; absent: none */
    furtherDays?: number | undefined;
    /** the customer asked for what it changes of a price that they were told and that is still held */
    customerAsked?: boolean | undefined;
    /** the repair of the catalogue that this price is for; absent where it is the one the job is under */
    repairId?: string | undefined;
  },
): Promise<{ revision: number; gross: number }> {
  return transaction(async (tx) => {
    const quote = await tx.quote.findUnique({
      where: { jobId: o.jobId },
      select: {
        id: true,
        revisions: {
          select: {
            revision: true,
            state: true,
            grossMinor: true,
            validUntil: true,
            isGross: true,
            isInspectionFeeTakenOff: true,
            lines: { orderBy: { position: 'asc' } },
          },
        },
      },
    });
    if (!quote) throw new Refusal('not-found', 'There is no such job.');
    const workshop = await readWorkshop(tx);
    const asGross = workshop.pricesIncludeTax;
    const covered = await coveredPart(tx, o.jobId, asGross);
    if (covered.length > 0 && o.lines.length === 0)
      throw new Refusal('invalid', 'Give at least one line that is not covered', 'description-0');
    const repairId = await otherRepair(tx, o);
    if (repairId !== null && covered.length > 0)
      throw new Refusal('invalid', UNDER_REPAIR_REASONS.covered, 'repair');
    const agreed = agreedOf({ quotes: [quote] });
    const isInspectionFeeTakenOff = readTakesFeeOff(agreed, workshop);
    const lines = withInspectionFee(
      o.lines,
      agreed ? linesKept(agreed.lines.map(readLine), { isGross: agreed.isGross, asGross }) : [],
      isInspectionFeeTakenOff,
    );
    const revision = 1 + Math.max(0, ...quote.revisions.map((each) => each.revision));
    const today = dayInZone(o.now, workshop.timeZone);
    const events = await tx.jobEvent.findMany({
      where: { jobId: o.jobId },
      orderBy: { version: 'asc' },
      select: { kind: true, data: true, at: true, toStage: true },
    });
    const held = heldPrice({ events, revisions: quote.revisions, today });
    await tx.quoteRevision.updateMany({
      where: { quoteId: quote.id, state: 'sent' },
      data: { state: 'replaced' },
    });
    const gross = await writeRevision(tx, {
      quoteId: quote.id,
      revision,
      state: 'sent',
      isGross: asGross,
      reason: o.reason,
      onYes: o.onYes,
      onNo: o.onNo,
      now: o.now,
      validUntil: addDays(today, workshop.approvalDays),
      workingDays: o.furtherDays || null,
      repairId,
      lines: [...covered, ...lines],
      conditions: { isInspectionFeeTakenOff },
    });
    const customerAsked = o.customerAsked ?? false;
    if (!mayReplace(held, { gross, customerAsked, isFaultFound: held?.isFaultFound, today })) {
      throw new Refusal(
        'invalid',
        heldSentence(formatDay(held?.validUntil ?? today, workshop.locale, 'weekday')),
        'customerAsked',
      );
    }
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: moveOf('ask-approval').from },
      event: {
        kind: 'offer-written',
        data: { revision, gross, ...(held && customerAsked && { customerAsked }) },
      },
    });
    return { revision, gross };
  });
}

type ForRepair = { jobId: string; repairId?: string | undefined; lines: readonly QuoteLine[] };

/** The repair a price is for, where it is another one than the job is under; refuses one that a unit of its model cannot be proved on. */
async function otherRepair(tx: Tx, { jobId, repairId, lines }: ForRepair): Promise<string | null> {
  if (repairId === undefined) return null;
  const job = await tx.job.findUniqueOrThrow({
    where: { id: jobId },
    select: {
      modelId: true,
      repair: { select: { id: true, name: true, formerNames: true } },
      events: {
        where: { kind: { in: ['sent-back', 'dispatch-undone'] } },
        orderBy: { version: 'asc' },
        select: { kind: true, data: true },
      },
    },
  });
  if (repairId === job.repair.id) return null;
  if (hasLeft(job.events)) throw new Refusal('conflict', UNDER_REPAIR_REASONS['left-before'], 'repair');
  const repair = await tx.repair.findFirst({
    where: { id: repairId, modelId: job.modelId, sheets: { some: {} } },
    select: { name: true },
  });
  if (!repair) throw new Refusal('invalid', 'Choose a repair of this model', 'repair');
  if (namesOldAlone(lines, job.repair)) {
    const sentence = `This price is for “${repair.name}”, and its work still says “${job.repair.name}”. Say in the lines what is done now.`;
    throw new Refusal('invalid', sentence, 'description-0');
  }
  return repairId;
}

/** The lines of a claim's first price that its final ruling covers; none on any other job. Refuses a claim not ruled yet. */
async function coveredPart(tx: Tx, jobId: string, asGross: boolean): Promise<QuoteLine[]> {
  const job = await tx.job.findUniqueOrThrow({
    where: { id: jobId },
    select: {
      claim: { select: { cause: true, ruling: true, secondLookAt: true } },
      quotes: {
        select: {
          revisions: {
            where: { revision: 1 },
            select: { isGross: true, lines: { orderBy: { position: 'asc' } } },
          },
        },
      },
    },
  });
  if (!job.claim) return [];
  const ruled = readRuling(job.claim);
  if (!ruled?.isFinal)
    throw new Refusal(
      'conflict',
      'The claim has no final ruling yet. What it covers is not offered for a price.',
    );
  if (!isCoveredAtLeastPartly(ruled.ruling)) return [];
  const first = job.quotes[0]?.revisions[0];
  if (!first) return [];
  return splitCovered(linesKept(first.lines.map(readLine), { isGross: first.isGross, asGross })).covered;
}
