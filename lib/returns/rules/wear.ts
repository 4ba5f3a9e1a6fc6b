import type { RiskCount } from '@/lib/statistics/survival';
import { fitWeibull, type WeibullFit } from '@/lib/statistics/weibull';
import { countWord } from './share-words';

export type Wear =
  | { kind: 'too-few'; returned: number; needed: number }
  | { kind: 'no-fit'; returned: number }
  /** `early`, `late`: the whole interval of the shape lies below, or above, 1 */
  | { kind: 'early' | 'late' | 'undecided'; fit: WeibullFit };

/** Returns below which no shape is told: with fewer its interval spans both meanings (common practice, no source). */
export const ENOUGH_RETURNS = 10;

/**
 * Do units come back early, as bad work and bad parts do, or late, as wear does? By the Weibull shape, and only where its whole
 * 95 % interval says so. Refuses to say with fewer than ten returns, or where all came back on one day.
 * The ten failures of NIST/SEMATECH 8.4.1.3: shape 1.72, interval 0.91 to 2.89: undecided.
 */
export function wearOf(counts: readonly RiskCount[], needed = ENOUGH_RETURNS): Wear {
  const returned = counts.reduce((sum, count) => sum + count.returned, 0);
  if (returned < needed) return { kind: 'too-few', returned, needed };
  const fit = fitWeibull(counts);
  if (!fit) return { kind: 'no-fit', returned };
  if (fit.shapeInterval.high < 1) return { kind: 'early', fit };
  return { kind: fit.shapeInterval.low > 1 ? 'late' : 'undecided', fit };
}

/** The same in words: 'Too few returns to say whether they come early or late: 4, and 10 are needed.' */
export function wearSentence(wear: Wear, locale: string): string {
  switch (wear.kind) {
    case 'too-few':
      return `Too few returns to say whether they come early or late: ${wear.returned === 0 ? 'none' : countWord(wear.returned)}, and ${wear.needed} are needed.`;
    case 'no-fit':
      return 'All came back on the same day, so nothing can be said of early or late.';
    case 'early':
      return `They come back early: the longer a unit has been well, the less likely it is to come back, as with bad work or a bad part (${shapeWords(wear.fit, locale)}, all below 1).`;
    case 'late':
      return `They come back late: the longer a unit has been out, the more likely it is to come back, as with wear (${shapeWords(wear.fit, locale)}, all above 1).`;
    case 'undecided':
      return `It cannot be said yet whether they come early or late (${shapeWords(wear.fit, locale)}, on both sides of 1).`;
  }
}

function shapeWords({ shape, shapeInterval, returned }: WeibullFit, locale: string): string {
  const format = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const [low, high] = [format.format(shapeInterval.low), format.format(shapeInterval.high)];
  return `Weibull shape ${format.format(shape)} from ${returned} returns, 95% interval ${low} to ${high}`;
}
