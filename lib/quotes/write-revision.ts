import { type Day, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { isKept } from '@/lib/numbers/column';
import { Refusal } from '@/lib/outcome';
import { type QuoteLine, revisionTotals } from './rules/lines';
import type { Conditions } from './stored-conditions';

export type RevisionWrite = {
  quoteId: string;
  revision: number;
  state: 'sent' | 'accepted';
  isGross: boolean;
  reason: string;
  onYes: string;
  onNo: string;
  /** the kind of work that is proposed, in the customer's words */
  proposal?: string;
  /** on a quote that was asked for from the unit's arrival; on a changed price beside those promised */
  workingDays?: number | null;
  note?: string;
  /** the repair that a yes to a changed price puts the job under; absent where it stays under its own */
  repairId?: string | null;
  now: Date;
  validUntil: Day;
  lines: readonly QuoteLine[];
  /** whole for a price that was asked for; of every other the job's contract has the rest */
  conditions: Conditions | Pick<Conditions, 'isInspectionFeeTakenOff'>;
  decided?: { at: Date; by: string; agreedText: string };
};

/**
 * Writes one revision with its lines and sums, and returns what the customer pays with tax, in minor units. Refuses lines
 * whose sums are more than can be kept.
 */
export async function writeRevision(tx: Tx, o: RevisionWrite): Promise<number> {
  const sums = revisionTotals(o.lines, o.isGross);
  const each = [sums.net, sums.tax, sums.gross, ...sums.breakdown.flatMap(({ base, tax }) => [base, tax])];
  if (!each.every(isKept))
    throw new Refusal('invalid', 'The lines come to more than can be kept.', 'amount-0');
  const revision = await tx.quoteRevision.create({
    data: {
      quoteId: o.quoteId,
      revision: o.revision,
      state: o.state,
      isGross: o.isGross,
      reason: o.reason,
      onYes: o.onYes,
      onNo: o.onNo,
      proposal: o.proposal ?? '',
      workingDays: o.workingDays ?? null,
      note: o.note ?? '',
      repairId: o.repairId ?? null,
      issuedAt: o.now,
      validUntil: dayToDate(o.validUntil),
      ...o.conditions,
      decidedAt: o.decided?.at ?? null,
      decidedBy: o.decided?.by ?? null,
      agreedText: o.decided?.agreedText ?? null,
      netMinor: sums.net,
      taxMinor: sums.tax,
      grossMinor: sums.gross,
    },
    select: { id: true },
  });
  await tx.quoteLine.createMany({
    data: o.lines.map((line, position) => ({
      revisionId: revision.id,
      position,
      kind: line.kind,
      description: line.description,
      amountMinor: line.amount,
      taxCategory: line.category,
      taxRateBps: line.rateBps,
    })),
  });
  return sums.gross;
}
