import { expect, it } from 'vitest';
import { lotLooks } from '@/lib/returns/rules/lot-looks';

it('compares a lot with its mates, and one without mates with all others', () => {
  const looks = lotLooks([
    { id: 'a', partId: 'socket', units: 12, returned: 4 },
    { id: 'b', partId: 'socket', units: 30, returned: 1 },
    { id: 'c', partId: 'battery', units: 20, returned: 2 },
  ]);
  expect(looks).toEqual([
    { key: 'a', ours: { returned: 4, units: 12 }, rest: { returned: 1, units: 30 }, against: 'same-part' },
    { key: 'b', ours: { returned: 1, units: 30 }, rest: { returned: 4, units: 12 }, against: 'same-part' },
    { key: 'c', ours: { returned: 2, units: 20 }, rest: { returned: 5, units: 42 }, against: 'all' },
  ]);
});
