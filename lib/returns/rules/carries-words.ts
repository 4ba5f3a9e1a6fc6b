import type { RepairWorth } from './repair-worth';

/**
 * What is said of all repairs together where none is told to lose money on its warranty; null where some are, since those are
 * named one by one. That all carry it is said only where one is known to, and of those that cost more than they bring nothing.
 *
 * carriesSentence(['yes', 'too-few']) -> 'Every repair of which enough is known carries its warranty, even at the upper figure.'
 * carriesSentence(['too-few']) -> 'Of no repair is enough known yet to say whether its price carries its warranty.'
 */
export function carriesSentence(all: readonly RepairWorth['carries'][]): string | null {
  const has = (carries: RepairWorth['carries']) => all.includes(carries);
  if (all.length === 0)
    return 'No repair was sent back with a certificate yet, so nothing is known of what warranty costs.';
  if (has('no') || has('in-doubt')) return null;
  if (has('below-cost')) {
    if (has('yes'))
      return 'All others of which enough is known carry their warranty, even at the upper figure.';
    return has('too-few') || has('unknown')
      ? 'Of the others not enough is known yet to say whether their price carries their warranty.'
      : null;
  }
  return has('yes')
    ? 'Every repair of which enough is known carries its warranty, even at the upper figure.'
    : 'Of no repair is enough known yet to say whether its price carries its warranty.';
}
