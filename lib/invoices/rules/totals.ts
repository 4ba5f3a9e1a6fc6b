import { roundedShare, safeSum } from '@/lib/money/amount';
import { type TaxBreakdown, type TaxCategory, totals } from '@/lib/money/tax';

/** A line of an invoice or credit note: its amount as agreed, with tax or without, and that amount without tax. */
export type Netted<L> = L & { net: number };

export type InvoiceTotals<L> = {
  lines: Netted<L>[];
  net: number;
  tax: number;
  /** EN 16931 BT-114 */
  rounding: number;
  /** net + tax + rounding */
  payable: number;
  breakdown: TaxBreakdown[];
};

type Taxed = { amount: number; category: TaxCategory; rateBps: number };

const WHOLE_BPS = 10_000;

/**
 * The sums of an invoice in minor units, as EN 16931 wants them, that come to exactly the agreed price.
 *
 * The lines' net amounts add up to the base of their category and rate (BR-CO-10, BR-S-08); tax is that base times the
 * rate, rounded half up once (BR-CO-17). Where the agreed amounts include the tax, there is about one sum in six
 * that no base gives exactly (11.00 at 20 % does: 9.17 + 1.83; 0.03 at 20 % does not): what is missing is the rounding
 * amount (BT-114), a minor unit or so for each rate. Refuses what totals() of lib/money refuses.
 *
 * invoiceTotals([{ amount: 3, category: 'S', rateBps: 2000 }], true) -> net 2, tax 0, rounding 1, payable 3
 */
export function invoiceTotals<L extends Taxed>(lines: readonly L[], isGross: boolean): InvoiceTotals<L> {
  const priced = totals(lines, isGross ? 'gross' : 'net');
  const breakdown = priced.breakdown.map((part) => ({
    ...part,
    tax: roundedShare(part.base, part.rateBps, WHOLE_BPS),
  }));
  const nets = lines.map((line) => line.amount);
  if (isGross) for (const part of breakdown) spread(lines, part, nets);
  const tax = safeSum(breakdown.map((part) => part.tax));
  return {
    lines: lines.map((line, place) => ({ ...line, net: nets[place] ?? line.amount })),
    net: priced.net,
    tax,
    rounding: safeSum([priced.gross, -priced.net, -tax]),
    payable: priced.gross,
    breakdown,
  };
}

/**
 * Shares the base of one rate out over its lines: each gets its own amount without tax rounded down, and the minor units
 * left over go one by one to the lines that lost most by it, the earlier one first. Floors never come to more than the
 * base, and never to less than it by more than one for each line.
 */
function spread(lines: readonly Taxed[], part: TaxBreakdown, nets: number[]): void {
  const divisor = BigInt(WHOLE_BPS + part.rateBps);
  const shares = lines.flatMap((line, place) => {
    if (line.category !== part.category || line.rateBps !== part.rateBps) return [];
    const exact = BigInt(line.amount) * BigInt(WHOLE_BPS);
    const lost = ((exact % divisor) + divisor) % divisor;
    return [{ place, net: Number((exact - lost) / divisor), lost }];
  });
  let left = part.base - safeSum(shares.map((share) => share.net));
  for (const share of shares.toSorted((a, b) => Number(b.lost - a.lost) || a.place - b.place)) {
    nets[share.place] = share.net + (left > 0 ? 1 : 0);
    left -= 1;
  }
}
