import { isInspectionFee } from './after-no';
import type { QuoteLine } from './lines';

/** What stands on the line that takes the fee off again. */
export const FEE_TAKEN_OFF = 'Inspection fee, taken off since the repair goes ahead';

const isTakenOff = (line: QuoteLine) => line.kind === 'inspection-fee' && line.amount < 0;

/** Whether a price is for finding the fault alone, so that the repair is priced after it. */
export function isInspectionOnly({ lines }: { lines: readonly { kind: string }[] }): boolean {
  return lines.length > 0 && lines.every(({ kind }) => kind === 'inspection-fee');
}

/**
 * Whether a price takes the inspection fee off where the repair goes ahead: as the workshop does today, and for good where
 * the customer has agreed to a fee that is to be taken off.
 *
 * takesFeeOff(false, { lines: [fee 18.00], isTakenOff: true }) -> true
 */
export function takesFeeOff(
  today: boolean,
  agreed: { lines: readonly QuoteLine[]; isTakenOff: boolean } | undefined,
): boolean {
  return today || (agreed?.isTakenOff === true && agreed.lines.some(isInspectionFee));
}

/**
 * A changed price with the inspection fee that was agreed to before, and, where the workshop takes it off a repair that
 * goes ahead, the line that does so; the customer sees both, so that the fee is neither forgotten nor charged twice. A
 * fee the price names itself is not put in again, and one that it takes off itself not taken off again.
 *
 * withInspectionFee([work 90.00], [work 72.00, fee 18.00], true) -> [work 90.00, fee 18.00, fee taken off -18.00]
 */
export function withInspectionFee(
  offered: readonly QuoteLine[],
  agreed: readonly QuoteLine[],
  takesOff: boolean,
): QuoteLine[] {
  const carried = offered.some(isInspectionFee) ? [] : agreed.filter(isInspectionFee);
  const lines = [...offered, ...carried];
  if (!takesOff || lines.some(isTakenOff)) return lines;
  const takenOff = lines
    .filter(isInspectionFee)
    .map((line) => ({ ...line, description: FEE_TAKEN_OFF, amount: -line.amount }));
  return [...lines, ...takenOff];
}
