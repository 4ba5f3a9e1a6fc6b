import {
  COVERED_TOGETHER,
  type LineChange,
  lineChanges,
  type QuoteLine,
  type ShownLine,
  shownLines,
  splitCovered,
  taxNameOf,
} from './lines';

/** What a price comes to, in minor units; net + tax = gross. */
export type Sums = { net: number; tax: number; gross: number };

/** A price as every page shows it: its lines, with tax in them or before it, and what they come to. */
export type ShownPrice = Sums & {
  lines: readonly ShownLine[];
  isGross: boolean;
  /** what the tax is called; null where every line is outside its scope */
  taxName: string | null;
};

type Revision = {
  lines: readonly QuoteLine[];
  isGross: boolean;
  netMinor: number;
  taxMinor: number;
  grossMinor: number;
};

export function sumsOf(revision: Omit<Revision, 'lines' | 'isGross'>): Sums {
  return { net: revision.netMinor, tax: revision.taxMinor, gross: revision.grossMinor };
}

/** A revision of a price as it is shown; `taxName` is what the workshop calls the tax. */
export function shownPrice(revision: Revision, taxName: string): ShownPrice {
  const { lines, isGross } = revision;
  return { ...sumsOf(revision), lines: shownLines(lines), isGross, taxName: taxNameOf(lines, taxName) };
}

/** `before` is added up to the total, `total` is what is paid, `within` is told of the total. */
export type SumRow = { sum: keyof Sums; words: string; place: 'before' | 'total' | 'within' };

/**
 * The sums under the lines of a price, in the one set of words that customers read: whatever the lines leave out stands
 * between them and the total, so that the rows add up.
 *
 * sumRows({ isGross: false, taxName: 'VAT', … }) -> Together, before tax; VAT; Total with tax
 */
export function sumRows({
  isGross,
  taxName,
  tax,
}: Pick<ShownPrice, 'isGross' | 'taxName' | 'tax'>): SumRow[] {
  if (taxName === null) return [{ sum: 'gross', words: 'Total', place: 'total' }];
  const total: SumRow = { sum: 'gross', words: 'Total with tax', place: 'total' };
  if (isGross)
    return tax === 0 ? [total] : [total, { sum: 'tax', words: `${taxName} in it`, place: 'within' }];
  return [
    { sum: 'net', words: 'Together, before tax', place: 'before' },
    { sum: 'tax', words: taxName, place: 'before' },
    total,
  ];
}

/**
 * Two prices side by side, every line of both, so that each adds up to its own total; what is covered comes first and
 * to nothing, as in a price alone.
 *
 * comparedLines([A 120.00], [A 120.00, B 35.00]) -> A was 120.00, now 120.00; B was null, now 35.00
 */
export function comparedLines(before: readonly QuoteLine[], after: readonly QuoteLine[]): LineChange[] {
  const [was, now] = [splitCovered(before), splitCovered(after)];
  const isCovered = was.covered.length > 0 || now.covered.length > 0;
  return [
    ...lineChanges(was.covered, now.covered),
    ...(isCovered ? [{ description: COVERED_TOGETHER, was: 0, now: 0 }] : []),
    ...lineChanges(was.paid, now.paid),
  ];
}
