import { formatMoney } from '@/lib/money/amount';
import type { Reserve, ReserveAnswer } from './reserve';
import { intervalWords, percentWords } from './share-words';

type Shown = { currency: string; locale: string };

/**
 * A reserve in words: on what it stands, what it comes to, and how far it can be trusted.
 *
 * 'Within the term of 90 days 4% come back (1.6% to 9.8%), at £25.00 a returned unit, all its claims together, from 4
 * units: £1.00 a repair, and at most £2.20, which holds in at least 90% of such reckonings.'
 */
export function reserveSentence(
  answer: ReserveAnswer,
  termDays: number,
  { currency, locale }: Shown,
): string {
  if (!answer.known)
    return answer.reason === 'no-cost'
      ? 'Not known yet: of too few returned units the cost is recorded.'
      : 'Not known yet: no unit has been out for a day.';
  const { reserve } = answer;
  const { chance } = reserve;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const within = chance.isReached
    ? `Within the term of ${termDays} days`
    : `Within ${chance.days} days, since no unit has been watched for the whole term of ${termDays} yet,`;
  const cost =
    reserve.costBasis === 'units'
      ? `${money(reserve.costMinor)} a returned unit, all its claims together, from ${reserve.costed} units`
      : `${money(reserve.costMinor)} a returned unit, as one claim is planned in the catalogue, since of too few the cost is recorded`;
  return (
    `${within} ${percentWords(chance.share, locale)} come back (${intervalWords(chance.interval, locale)}), at ${cost}: ` +
    `${money(reserve.reserveMinor)} a repair${chance.isReached ? '' : ' for those days'}, and at most ${money(reserve.upperMinor)}, which holds in at least ${percentWords(reserve.level, locale)} of such reckonings.` +
    (chance.isReached ? '' : ' It will rise as units reach the end of their cover.')
  );
}

/** How the bound is made, for the foot of a page. */
export function boundSentence({ level }: Pick<Reserve, 'level'>, locale: string): string {
  return `The upper figure joins the exact bound of the share and Student's bound of the mean cost of a returned unit, and holds in at least ${percentWords(level, locale)} of simulated years, in which units may come back more than once. It bounds what a repair costs in the long run; one year may cost more.`;
}
