import { type QuoteLine, revisionTotals } from './lines';

/**
 * Lines of a price that was kept with tax in their amounts, or before it, as they are written where prices are kept the
 * other way: each with its own rate, half up. What the customer pays for a line stays what it was, or one minor unit from
 * it where no amount before tax comes to exactly that; a line and the one that takes it off stay opposite.
 *
 * linesKept([fee 15.00 at 20 %], { isGross: false, asGross: true }) -> [fee 18.00]
 */
export function linesKept<L extends QuoteLine>(
  lines: readonly L[],
  { isGross, asGross }: { isGross: boolean; asGross: boolean },
): L[] {
  if (isGross === asGross) return [...lines];
  return lines.map((line) => {
    const { net, gross } = revisionTotals([line], isGross);
    return { ...line, amount: asGross ? gross : net };
  });
}

/** What to tell whoever writes a price from an older one whose amounts were kept the other way. */
export function workedOverWords(asGross: boolean): string {
  return asGross
    ? 'Amounts of the price before were kept before tax. They stand here with tax, as prices are kept now.'
    : 'Amounts of the price before were kept with tax. They stand here before tax, as prices are kept now.';
}
