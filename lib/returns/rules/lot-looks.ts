import { type EqualWatch, equalWatch, together, type Watched, without } from './equal-watch';

export type LotCount = Watched & { id: string; partId: string };
export type LotLook = EqualWatch & { key: string; against: 'same-part' | 'all' };

/**
 * What each lot is compared with, over equal watches: the other lots of its part, since parts differ by nature, or all other
 * lots where its part went out of one lot only. In the order given.
 *
 * Lots A and B of a socket, C of a battery: A against B, B against A, C against both.
 */
export function lotLooks(lots: readonly LotCount[]): LotLook[] {
  const byPart = new Map<string, LotCount[]>();
  for (const lot of lots) {
    const mates = byPart.get(lot.partId);
    if (mates) mates.push(lot);
    else byPart.set(lot.partId, [lot]);
  }
  const all = together(lots);
  const ofPart = new Map([...byPart].map(([partId, mates]) => [partId, together(mates)]));
  return lots.map((lot) => {
    const isAlone = (byPart.get(lot.partId)?.length ?? 0) < 2;
    const others = without(isAlone ? all : (ofPart.get(lot.partId) ?? all), lot);
    return { key: lot.id, ...equalWatch(lot, others), against: isAlone ? 'all' : 'same-part' };
  });
}
