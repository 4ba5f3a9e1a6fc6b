import { roundedShare } from '@/lib/money/amount';
import { type QuoteLine, returnFeeLine } from './lines';

type FeeLine = { kind: string; amount: number; rateBps: number };

/** A fee for finding the fault; the line that takes one off again is of the same kind, and below nothing. */
export function isInspectionFee(line: { kind: string; amount: number }): boolean {
  return line.kind === 'inspection-fee' && line.amount > 0;
}

/** A line whose amount has the tax in it, from one of a price that is kept with tax or without. */
export function withTax<L extends FeeLine>(line: L, isGross: boolean): L {
  return isGross ? line : { ...line, amount: line.amount + roundedShare(line.amount, line.rateBps, 10_000) };
}

/** The inspection fee that a price agrees to, with tax in minor units, also where a line takes it off a repair. */
export function inspectionFeeOf(lines: readonly FeeLine[], isGross: boolean): number {
  return lines.filter(isInspectionFee).reduce((sum, line) => sum + withTax(line, isGross).amount, 0);
}

/**
 * What is owed once the customer has said no, line by line with tax: the inspection fee that was agreed to before, and
 * the return fee, taxed like the repair. A line that took the fee off does not count, since the repair does not go ahead.
 * `returnFee` is in minor units with tax; 0 keeps its line, so that the price says that the way back is free.
 *
 * linesAfterNo({ agreed: [work 72.00, fee 18.00], isGross: true, returnFee: 9.60 }) -> [fee 18.00, return 9.60]
 */
export function linesAfterNo(o: {
  agreed: readonly QuoteLine[];
  isGross: boolean;
  returnFee: number;
}): QuoteLine[] {
  const [first] = o.agreed;
  if (!first) throw new RangeError('A price without lines cannot be declined');
  const { category, rateBps } = first;
  return [
    ...o.agreed.filter(isInspectionFee).map((line) => withTax(line, o.isGross)),
    returnFeeLine({ amount: o.returnFee, category, rateBps }),
  ];
}

export type AfterNo = {
  /** both with tax, minor units */
  inspectionFee: number;
  returnFee: number;
};

/** What a no costs; null where it sends nothing back, because part of the claim is covered and gets repaired. */
export type CostOfNo = AfterNo | null;

/** The two amounts of linesAfterNo, for pages and mails that name them. */
export function feesAfterNo(lines: readonly QuoteLine[]): AfterNo {
  const sum = (kind: QuoteLine['kind']) =>
    lines.filter((line) => line.kind === kind).reduce((total, line) => total + line.amount, 0);
  return { inspectionFee: sum('inspection-fee'), returnFee: sum('return-fee') };
}

type Money = (minor: number) => string;

/** What is owed for a unit that goes back unrepaired: 'the return fee of £9.60, and nothing else'. */
export function feesWords({ inspectionFee, returnFee }: AfterNo, money: Money): string {
  if (returnFee + inspectionFee === 0) return `free of charge (${money(0)})`;
  if (inspectionFee === 0) return `the return fee of ${money(returnFee)}, and nothing else`;
  if (returnFee === 0) return `the inspection fee of ${money(inspectionFee)}, and nothing else`;
  return `the inspection fee of ${money(inspectionFee)} and the return fee of ${money(returnFee)}, ${money(returnFee + inspectionFee)} together, and nothing else`;
}

/**
 * What a no to a later price would cost, told before anything is agreed, from the fees of the lines that are agreed to.
 *
 * laterNoWords({ inspectionFee: 0, returnFee: 960 }, money)
 *   -> 'If you then say no, you pay the return fee of £9.60, and nothing else.'
 */
export function laterNoWords(fees: AfterNo, money: Money): string {
  const words = feesWords(fees, money);
  return fees.inspectionFee + fees.returnFee === 0
    ? `If you then say no, the unit comes back ${words}.`
    : `If you then say no, you pay ${words}.`;
}
