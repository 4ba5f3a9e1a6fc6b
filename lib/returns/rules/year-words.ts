import { formatMoney } from '@/lib/money/amount';
import type { YearAgainstReserve } from './year';

type Shown = { currency: string; locale: string };

/**
 * A year in words; what was sent and what was spent in it only side by side, since the claims are of other units too.
 *
 * 'In the last year 40 units were sent back with a reserve of £40.00, £83.20 at most, and £52.00 went on claims opened in it, of
 * these and of earlier units. Cover as long as the term ended for 25 units in it: their own claims cost £30.00, more than their
 * reserve of £25.00, within the upper £52.00.'
 */
export function yearSentence(year: YearAgainstReserve, { currency, locale }: Shown): string {
  const money = (minor: number) => formatMoney(minor, currency, locale);
  return [
    `In the last year ${unitsWere(year.sent)} sent back with a reserve of ${money(year.reserveMinor)}, ${money(year.upperMinor)} at most, and ${money(year.spentMinor)} went on claims opened in it, of these and of earlier units.`,
    openWords(year.uncosted),
    endedWords(year, money),
    year.ended.units > 0 ? openWords(year.ended.uncosted) : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function endedWords({ ended }: YearAgainstReserve, money: (minor: number) => string): string {
  if (ended.units === 0)
    return 'No cover as long as the term ended in it, so there is nothing to judge the reserve by yet.';
  const reserve = `their reserve of ${money(ended.reserveMinor)}`;
  const verdict = {
    within: `within ${reserve}`,
    'above-reserve': `more than ${reserve}, within the upper ${money(ended.upperMinor)}`,
    'above-upper': `more than even the upper ${money(ended.upperMinor)} of ${reserve}`,
  };
  const said = ended.verdict ? verdict[ended.verdict] : `beside ${reserve}: too few units to judge it by`;
  return `Cover as long as the term ended for ${ended.units === 1 ? '1 unit' : `${ended.units} units`} in it: their own claims cost ${money(ended.spentMinor)}, ${said}.`;
}

function openWords(uncosted: number): string {
  if (uncosted === 0) return '';
  return `${uncosted === 1 ? 'One claim has' : `${uncosted} claims have`} no recorded cost yet.`;
}

/** '1 unit was', '40 units were' */
function unitsWere(count: number): string {
  return count === 1 ? '1 unit was' : `${count} units were`;
}
