import { safeSum } from '@/lib/money/amount';
import type { TaxCategory } from '@/lib/money/tax';
import { type InvoiceTotals, invoiceTotals } from './totals';

export type InvoicedLine = { position: number; amount: number; category: TaxCategory; rateBps: number };
/** An invoice or a credit note as far as giving credit goes; a credit note's lines keep the positions of the invoice's. */
export type Issued<L extends { position: number; amount: number } = { position: number; amount: number }> = {
  lines: readonly L[];
  payable: number;
};

export type CreditLeft = { byPosition: ReadonlyMap<number, number>; payable: number };

/** What of an invoice is not credited yet: of each line in the invoice's own amounts, and in all. */
export function leftToCredit(invoice: Issued, credits: readonly Issued[]): CreditLeft {
  const byPosition = new Map(invoice.lines.map((line) => [line.position, line.amount]));
  for (const line of credits.flatMap((credit) => credit.lines)) {
    byPosition.set(line.position, (byPosition.get(line.position) ?? 0) - line.amount);
  }
  const payable = safeSum([invoice.payable, ...credits.map((credit) => -credit.payable)]);
  return { byPosition, payable };
}

export type CreditReading<L> =
  | { ok: true; totals: InvoiceTotals<L> }
  | { ok: false; reason: 'nothing' | 'too-much'; position: number | null };

/**
 * The sums of a credit note over chosen amounts of an invoice's lines, in minor units, with tax or without as the invoice
 * has them. Credit notes never come to more than their invoice: a line's amount lies between nothing and what is left
 * of it ('too-much' names the line), and their payable sum stays within the invoice's. Tax rounded on each of several
 * credit notes can differ from the invoice's by a minor unit for each rate; the last one that takes all that is left makes
 * that up in its rounding amount. A credit note that gives nothing back is refused as 'nothing'.
 *
 * Invoice of one line 72.00 with tax, 10.00 credited before: choosing 62.00 is all that is left; 62.01 is too much.
 */
export function creditTotals<L extends InvoicedLine>(
  invoice: Issued<L> & { isGross: boolean },
  credits: readonly Issued[],
  chosen: ReadonlyMap<number, number>,
): CreditReading<L> {
  const left = leftToCredit(invoice, credits);
  for (const [position, amount] of chosen) {
    const most = left.byPosition.get(position) ?? 0;
    if (amount !== 0 && (Math.sign(amount) !== Math.sign(most) || Math.abs(amount) > Math.abs(most)))
      return { ok: false, reason: 'too-much', position };
  }
  const lines = invoice.lines.flatMap((line) => {
    const amount = chosen.get(line.position) ?? 0;
    return amount === 0 ? [] : [{ ...line, amount }];
  });
  const totals = invoiceTotals(lines, invoice.isGross);
  const slack = totals.breakdown.length * (credits.length + 1);
  if (totals.payable - left.payable > slack) return { ok: false, reason: 'too-much', position: null };
  const isAll = [...left.byPosition].every(([position, amount]) => (chosen.get(position) ?? 0) === amount);
  const payable = isAll ? left.payable : Math.min(totals.payable, left.payable);
  if (lines.length === 0 || payable <= 0) return { ok: false, reason: 'nothing', position: null };
  return {
    ok: true,
    totals: { ...totals, payable, rounding: safeSum([payable, -totals.net, -totals.tax]) },
  };
}

/** Name of the field that holds the amount of one line. */
export function creditField(position: number): string {
  return `line-${position}`;
}
