import { beforeEach, expect, it, vi } from 'vitest';
import { day } from '@/lib/calendar/day';
import { type LotFigure, readLotFigures } from '@/lib/returns/lot-figures';
import { compareAll } from '@/lib/returns/rules/evidence';

vi.mock('@/lib/returns/lot-figures', () => ({ readLotFigures: vi.fn() }));

const read = vi.mocked(readLotFigures);
const CLOCK = { today: day('2027-03-01'), labourRateMinor: 4800 };
const at = (minutes: number) => new Date(Date.UTC(2027, 2, 1, 10, minutes));

/** Six of eight of the first came back and two of ninety of the second; the third is one of four, against the rest. */
function figures(): LotFigure[] {
  const looks = [
    { key: 'bad', days: 90, ours: { returned: 6, units: 8 }, rest: { returned: 3, units: 94 } },
    { key: 'good', days: 90, ours: { returned: 2, units: 90 }, rest: { returned: 7, units: 12 } },
    { key: 'unlucky', days: 90, ours: { returned: 1, units: 4 }, rest: { returned: 8, units: 98 } },
  ];
  return compareAll(looks).map((comparison) => ({
    id: comparison.key,
    code: comparison.key,
    part: 'Jack socket',
    partId: 'socket',
    supplier: 'Harbour Parts',
    tally: {
      id: comparison.key,
      ...comparison.ours,
      spans: [],
      otherwise: 0,
      daysAtRisk: 900,
      claims: comparison.ours.returned,
      costMinor: 0,
      uncosted: comparison.ours.returned,
      causes: { workmanship: 0, part: comparison.ours.returned, firstDamage: 0, inDoubt: 0 },
    },
    against: 'same-part' as const,
    comparison,
  }));
}

beforeEach(() => {
  vi.resetModules();
  read.mockReset();
});

const fresh = async () => (await import('@/lib/returns/flagged-lots')).flaggedLots;

it('flags a lot that comes back more than chance does, and no other', async () => {
  read.mockResolvedValue(figures());
  const flaggedLots = await fresh();
  expect((await flaggedLots(CLOCK, at(0))).map(({ id }) => id)).toEqual(['bad']);
});

it('counts once in ten minutes, and again after', async () => {
  read.mockResolvedValue(figures());
  const flaggedLots = await fresh();
  await flaggedLots(CLOCK, at(0));
  await flaggedLots(CLOCK, at(9));
  expect(read).toHaveBeenCalledTimes(1);
  await flaggedLots(CLOCK, at(10));
  expect(read).toHaveBeenCalledTimes(2);
});

it('asks again after a failure', async () => {
  read.mockRejectedValueOnce(new Error('connection lost')).mockResolvedValue([]);
  const flaggedLots = await fresh();
  await expect(flaggedLots(CLOCK, at(0))).rejects.toThrow('connection lost');
  expect(await flaggedLots(CLOCK, at(1))).toEqual([]);
});
