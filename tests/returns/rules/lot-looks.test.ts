import { expect, it } from 'vitest';
import { SPANS } from '@/lib/returns/rules/equal-watch';
import { lotLooks } from '@/lib/returns/rules/lot-looks';

/** All watched for ninety days and no longer, and back within the first fortnight if at all. */
function lot(id: string, partId: string, units: number, returned: number) {
  const spans = SPANS.map((days) => (days <= 90 ? { units, returned } : { units: 0, returned: 0 }));
  return { id, partId, units, returned, spans };
}

it('compares a lot with its mates, and one without mates with all others', () => {
  const looks = lotLooks([lot('a', 'socket', 12, 4), lot('b', 'socket', 30, 1), lot('c', 'battery', 20, 2)]);
  const count = (returned: number, units: number) => ({ returned, units });
  const of = { days: 90 };
  expect(looks).toEqual([
    { ...of, key: 'a', ours: count(4, 12), rest: count(1, 30), against: 'same-part' },
    { ...of, key: 'b', ours: count(1, 30), rest: count(4, 12), against: 'same-part' },
    { ...of, key: 'c', ours: count(2, 20), rest: count(5, 42), against: 'all' },
  ]);
});
