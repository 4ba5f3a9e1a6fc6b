import type { Look } from './evidence';

export type LotCount = { id: string; partId: string; units: number; returned: number };
export type LotLook = Look & { against: 'same-part' | 'all' };

/**
 * What each lot is compared with: the other lots of its part, since parts differ by nature, or all other lots where its part
 * went out of one lot only. In the order given.
 *
 * Lots A and B of a socket, C of a battery: A against B, B against A, C against both.
 */
export function lotLooks(lots: readonly LotCount[]): LotLook[] {
  const all = sumOf(lots);
  const byPart = new Map<string, LotCount[]>();
  for (const lot of lots) byPart.set(lot.partId, [...(byPart.get(lot.partId) ?? []), lot]);
  return lots.map((lot) => {
    const mates = byPart.get(lot.partId) ?? [];
    const isAlone = mates.length < 2;
    const together = isAlone ? all : sumOf(mates);
    return {
      key: lot.id,
      ours: { returned: lot.returned, units: lot.units },
      rest: { returned: together.returned - lot.returned, units: together.units - lot.units },
      against: isAlone ? 'all' : 'same-part',
    };
  });
}

function sumOf(lots: readonly LotCount[]): { returned: number; units: number } {
  return {
    returned: lots.reduce((sum, lot) => sum + lot.returned, 0),
    units: lots.reduce((sum, lot) => sum + lot.units, 0),
  };
}
