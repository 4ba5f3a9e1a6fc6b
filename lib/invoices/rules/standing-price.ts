import { safeSum } from '@/lib/money/amount';
import type { TaxBreakdown, TaxCategory } from '@/lib/money/tax';

type StandingLine = { position: number; amount: number; net: number };

/** An invoice or credit note as far as what stands of a job's price goes; amounts in minor units, a credit note's positive too. */
export type Issued<L extends StandingLine> = {
  id: string;
  kind: 'invoice' | 'credit-note';
  correctsId: string | null;
  isGross: boolean;
  lines: readonly L[];
  breakdown: readonly TaxBreakdown[];
  net: number;
  tax: number;
  rounding: number;
  payable: number;
};

export type StandingPrice<L> = {
  mode: 'net' | 'gross';
  /** what is left of each invoiced line, in that mode */
  lines: L[];
  breakdown: TaxBreakdown[];
  net: number;
  tax: number;
  rounding: number;
  payable: number;
  credited: number;
};

/**
 * What stands of a job's invoices once their credit notes are taken off: base and tax of every category and rate, and the
 * rounding, are summed as they were issued and never worked out anew, so that whatever else names the tax names the same
 * (EN 16931 BR-CO-17: tax is the base of a category times its rate; BT-114: the rounding amount). Amounts include the tax
 * where every invoice's do.
 *
 * One invoice of 14.00 at 19 % with tax: net 11.76, tax 2.23, rounding 0.01, payable 14.00
 */
export function standingPrice<L extends StandingLine>(papers: readonly Issued<L>[]): StandingPrice<L> {
  const sign = ({ kind }: { kind: string }) => (kind === 'invoice' ? 1 : -1);
  const sum = (of: (paper: Issued<L>) => number) => safeSum(papers.map((paper) => sign(paper) * of(paper)));
  const invoices = papers.filter(({ kind }) => kind === 'invoice');
  const mode = invoices.every(({ isGross }) => isGross) ? 'gross' : 'net';
  return {
    mode,
    lines: invoices.flatMap((invoice) => linesLeft(invoice, papers, mode)),
    breakdown: breakdownLeft(papers.map((paper) => ({ ...paper, sign: sign(paper) }))),
    net: sum(({ net }) => net),
    tax: sum(({ tax }) => tax),
    rounding: sum(({ rounding }) => rounding),
    payable: sum(({ payable }) => payable),
    credited: safeSum(papers.filter(({ kind }) => kind === 'credit-note').map(({ payable }) => payable)),
  };
}

function linesLeft<L extends StandingLine>(
  invoice: Issued<L>,
  papers: readonly Issued<L>[],
  mode: 'net' | 'gross',
): L[] {
  const taken = papers.filter(({ correctsId }) => correctsId === invoice.id).flatMap(({ lines }) => lines);
  const amountOf = (line: L) => (mode === 'gross' ? line.amount : line.net);
  return invoice.lines.flatMap((line) => {
    const off = taken.filter(({ position }) => position === line.position).map(amountOf);
    const amount = amountOf(line) - safeSum(off);
    return amount === 0 && off.length > 0 ? [] : [{ ...line, amount }];
  });
}

function breakdownLeft(
  papers: readonly { breakdown: readonly TaxBreakdown[]; sign: number }[],
): TaxBreakdown[] {
  const left = new Map<`${TaxCategory}${number}`, TaxBreakdown>();
  for (const { breakdown, sign } of papers) {
    for (const { category, rateBps, base, tax } of breakdown) {
      const part = left.get(`${category}${rateBps}`) ?? { category, rateBps, base: 0, tax: 0 };
      left.set(`${category}${rateBps}`, {
        category,
        rateBps,
        base: part.base + sign * base,
        tax: part.tax + sign * tax,
      });
    }
  }
  return [...left.values()].filter(({ base, tax }) => base !== 0 || tax !== 0);
}
