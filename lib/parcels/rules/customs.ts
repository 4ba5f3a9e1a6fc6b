/**
 * Countries of the customs union of the European Union by ISO 3166-1, Monaco with them (Regulation (EU) No 952/2013
 * Art. 4; the list is from memory). Parts of some of them lie outside it and are not told apart by the country alone.
 */
const CUSTOMS_UNION: ReadonlySet<string> = new Set(
  'AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MC MT NL PL PT RO SE SI SK'.split(' '),
);

/**
 * Whether a parcel needs a customs note: it goes to another country that is neither one of the workshop's customs-free
 * list nor, for a workshop in the European Union, another country of its customs union.
 *
 * needsCustomsNote({ from: 'IE', to: 'DE', free: [] }) -> false; from 'GB' to 'DE' -> true
 */
export function needsCustomsNote(o: { from: string; to: string; free: readonly string[] }): boolean {
  if (o.from === o.to || o.free.includes(o.to)) return false;
  return !(CUSTOMS_UNION.has(o.from) && CUSTOMS_UNION.has(o.to));
}
