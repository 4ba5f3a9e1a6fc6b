import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { ClaimAgain } from '@/lib/warranty/rules/claim-again';
import type { JobKind } from './stages';

/**
 * How a customer whose booking was cancelled has the unit repaired after all. A price that was asked for ends with its booking, and
 * its repair may be on no list. A claim can be opened again as far as cover lasts; `claim` is absent where that is not known.
 */
export function againWords(
  { kind, isQuoted, claim }: { kind: JobKind; isQuoted: boolean; claim?: ClaimAgain | undefined },
  locale: string,
): string {
  if (kind === 'claim') return claim ? claimAgainWords(claim, locale) : WHILE_COVERED;
  return isQuoted
    ? 'The price you agreed to ended with the booking. If you still want the repair, ask us for a price again.'
    : 'You can book again from the price list at any time.';
}

const WHILE_COVERED = 'You can claim again from your certificate while its cover lasts.';

function claimAgainWords({ endsOn, until, lateUntil }: ClaimAgain, locale: string): string {
  const day = (d: Day) => formatDay(d, locale, 'weekday');
  if (until !== null)
    return `You can claim again from your certificate until ${day(until)}. A new claim counts from its own day.`;
  if (lateUntil !== null)
    return `Cover ended on ${day(endsOn)}. A claim that you open again by ${day(lateUntil)} comes late, and a person decides whether it is let in.`;
  return `Cover ended on ${day(endsOn)}, so you cannot claim this again from your certificate. Your rights by law stay open. If you want it repaired as a paid job, ask us for a price: asking is free.`;
}

/**
 * What cancelling a claim gives up, before it is done: the day it counts from, and whether a new one would still be in time.
 * `mayPost` is false where the unit must not be posted.
 */
export function cancelClaimWords(
  o: { countsFrom: Day; claim: ClaimAgain; mayPost: boolean },
  locale: string,
): string {
  const again = againWords({ kind: 'claim', isQuoted: false, claim: o.claim }, locale);
  const patience = o.mayPost ? 'You need not hurry: post it when it suits you.' : 'You need not hurry.';
  return `Your claim counts from ${formatDay(o.countsFrom, locale, 'weekday')}, however late the unit comes. ${patience} If you cancel it, that day is lost. ${again}`;
}
