import { formatMoney } from '@/lib/money/amount';
import { ENOUGH_WATCHED, type RepairWorth } from './repair-worth';

export const CARRIES_WORD: Record<RepairWorth['carries'], string> = {
  yes: 'carries its warranty',
  'in-doubt': 'may lose money',
  no: 'loses money',
  'below-cost': 'costs more than it brings, warranty aside',
  'too-few': 'too few to say',
  unknown: 'not known yet',
};

/** From when on anything is told of a repair, for the end of a sentence. */
export const TOLD_FROM = `from ${ENOUGH_WATCHED} watched units or three returns on, once ${ENOUGH_WATCHED} units, or two of three, were watched for two thirds of the term`;

/**
 * What a repair leaves before and after its warranty, in words.
 *
 * 'One repair brings £60.00 without tax and costs £40.00 in bench time and parts, which leaves £20.00. Its warranty is expected to
 * take £6.00, and £25.00 at most: it may lose money.'
 */
export function worthSentence(
  worth: RepairWorth,
  { currency, locale }: { currency: string; locale: string },
) {
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const before = `One repair brings ${money(worth.netMinor)} without tax and costs ${money(worth.plannedMinor)} in bench time and parts, which leaves ${money(worth.leavesMinor)}.`;
  if (worth.afterReserveMinor === null || worth.afterUpperMinor === null)
    return `${before} What its warranty takes is not known yet.`;
  const expected = worth.leavesMinor - worth.afterReserveMinor;
  const upper = worth.leavesMinor - worth.afterUpperMinor;
  if (worth.carries === 'too-few')
    return `${before} Too few units were watched long enough to say what its warranty takes: it is told ${TOLD_FROM}.`;
  if (!worth.isLong)
    return `${before} In the days watched so far its warranty is expected to take ${money(expected)}, and ${money(upper)} at most, and it will rise: it ${CARRIES_WORD[worth.carries]}.`;
  return `${before} Its warranty is expected to take ${money(expected)}, and ${money(upper)} at most: it ${CARRIES_WORD[worth.carries]}.`;
}
