import { type TaxBreakdown, type TaxCategory, type Totals, totals } from '@/lib/money/tax';

export const LINE_KINDS = [
  'labour',
  'part',
  'postage',
  'inspection-fee',
  'return-fee',
  'discount',
  'cover',
  'adjustment',
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

/** Kinds a person writes into a price; what a certificate covers is put there by its claim alone. */
export const OFFERED_KINDS = LINE_KINDS.filter((kind) => kind !== 'cover');

/** One line of a quote. The amount is in minor units, with tax or without as the whole revision says. */
export type QuoteLine = {
  kind: LineKind;
  description: string;
  amount: number;
  category: TaxCategory;
  rateBps: number;
};

/** Sums of a revision: tax once per category and rate (EN 16931 BR-CO-17), net + tax = gross always. */
export function revisionTotals(lines: readonly QuoteLine[], isGross: boolean): Totals {
  return totals(lines, isGross ? 'gross' : 'net');
}

/** What the tax in some lines is called; null where all of them are outside its scope. */
export function taxNameOf(lines: readonly QuoteLine[], taxName: string): string | null {
  return lines.every(({ category }) => category === 'O') ? null : taxName;
}

/**
 * What a paper says of the tax in some lines: what it is called, the number of whoever charges it, and why a line is exempt.
 * `breakdown` is that of the same lines, or what is left of it.
 */
export function taxOnPaper(
  lines: readonly QuoteLine[],
  breakdown: readonly Pick<TaxBreakdown, 'category'>[],
  house: { taxName: string; taxNumber: string; taxExemptReason: string },
): { taxName: string | null; taxNumber: string | null; taxNotes: string[] } {
  const isExempt = breakdown.some(({ category }) => category === 'E');
  return {
    taxName: taxNameOf(lines, house.taxName),
    taxNumber: house.taxNumber || null,
    taxNotes: isExempt && house.taxExemptReason !== '' ? [house.taxExemptReason] : [],
  };
}

/** The single line a booking from the price list agrees to. */
export function bookedLine(repair: {
  name: string;
  priceMinor: number;
  taxCategory: TaxCategory;
  taxRateBps: number;
}): QuoteLine {
  return {
    kind: 'labour',
    description: repair.name,
    amount: repair.priceMinor,
    category: repair.taxCategory,
    rateBps: repair.taxRateBps,
  };
}

/**
 * The lines of a job under warranty: the same work at its price, and cover for all of it, so that the customer's
 * total is exactly 0.
 */
export function coveredLines(line: QuoteLine, certificate: string): QuoteLine[] {
  return [
    line,
    { ...line, kind: 'cover', description: `Covered by certificate ${certificate}`, amount: -line.amount },
  ];
}

export type SplitPrice = {
  /** the lines under cover, which come to nothing together; empty where nothing is covered */
  covered: QuoteLine[];
  /** what the customer pays for */
  paid: QuoteLine[];
};

/**
 * The lines of a price in two: those up to the last cover line, when they come to exactly nothing, and the rest.
 * [work 72.00, cover -72.00, pads 24.00] splits into the first two and the pads; a price without cover is all paid.
 */
export function splitCovered(lines: readonly QuoteLine[]): SplitPrice {
  const end = lines.findLastIndex((line) => line.kind === 'cover') + 1;
  const covered = lines.slice(0, end);
  const isFree = covered.reduce((sum, line) => sum + line.amount, 0) === 0;
  return isFree ? { covered, paid: lines.slice(end) } : { covered: [], paid: [...lines] };
}

/** Words for the sum of what is covered, wherever the lines of a price are shown. */
export const COVERED_TOGETHER = 'The covered part, together';

export type ShownLine = { description: string; amount: number };

/**
 * The lines of a price as they are shown: after those under cover stands what the customer pays for them, which is
 * nothing. A price without a covered part is shown line by line.
 */
export function shownLines(lines: readonly QuoteLine[]): ShownLine[] {
  const { covered, paid } = splitCovered(lines);
  const together = covered.length === 0 ? [] : [{ description: COVERED_TOGETHER, amount: 0 }];
  return [...covered, ...together, ...paid].map(({ description, amount }) => ({ description, amount }));
}

/** What is left to pay when the customer declines a changed price: the return fee alone. */
export function returnFeeLine(o: { amount: number; category: TaxCategory; rateBps: number }): QuoteLine {
  return {
    kind: 'return-fee',
    description: 'Return of the unit, unrepaired',
    amount: o.amount,
    category: o.category,
    rateBps: o.rateBps,
  };
}

export type LineChange = { description: string; was: number | null; now: number | null };

/**
 * What differs between two revisions, line by line. Lines that stay the same are left out.
 * [A 120.00] against [A 120.00, B 35.00] gives one change: B, was null, now 35.00.
 */
export function revisionChanges(before: readonly QuoteLine[], after: readonly QuoteLine[]): LineChange[] {
  return lineChanges(before, after).filter(({ was, now }) => was !== now);
}

/** Every line of two revisions side by side, matched by kind and description; those of the earlier one first. */
export function lineChanges(before: readonly QuoteLine[], after: readonly QuoteLine[]): LineChange[] {
  const key = (line: QuoteLine) => `${line.kind}\u0000${line.description}`;
  const sums = (lines: readonly QuoteLine[]) => {
    const map = new Map<string, number>();
    for (const line of lines) map.set(key(line), (map.get(key(line)) ?? 0) + line.amount);
    return map;
  };
  const was = sums(before);
  const now = sums(after);
  return [...new Set([...was.keys(), ...now.keys()])].map((each) => ({
    description: each.slice(each.indexOf('\u0000') + 1),
    was: was.get(each) ?? null,
    now: now.get(each) ?? null,
  }));
}
