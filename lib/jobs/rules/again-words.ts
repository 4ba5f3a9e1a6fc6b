import type { JobKind } from './stages';

/**
 * How a customer whose booking was cancelled has the unit repaired after all, in one sentence. A price that was asked for
 * ends with its booking, and its repair may be on no list.
 */
export function againWords({ kind, isQuoted }: { kind: JobKind; isQuoted: boolean }): string {
  if (kind === 'claim') return 'You can claim again from your certificate while its cover lasts.';
  return isQuoted
    ? 'The price you agreed to ended with the booking. If you still want the repair, ask us for a price again.'
    : 'You can book again from the price list at any time.';
}
