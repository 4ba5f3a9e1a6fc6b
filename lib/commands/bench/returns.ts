import { addDays } from '@/lib/calendar/day';
import { coverClock } from '@/lib/returns/cover-clock';
import { readLearning } from '@/lib/returns/lessons';
import { readLotFigures } from '@/lib/returns/lot-figures';
import { monthCounts } from '@/lib/returns/months';
import { countRows, ROWS_PER_PAGE, readRows } from '@/lib/returns/read-rows';
import { readRepairFigures } from '@/lib/returns/repair-figures';
import { tallyBy, watchOf } from '@/lib/returns/tallies';
import { readWorkshop } from '@/lib/workshop/records';
import type { Reading } from './readings';

/**
 * The readings of the returns room: those that count every unit and so grow with the history, at most as fast as it, and those
 * of one thing, which read its own rows alone. What a page reads side by side is read side by side; the repair, the lot and
 * the hand are those with the most units, the month is that of thirty days ago, the file is read on from its middle.
 */
export async function returnsReadings(now: Date): Promise<Reading[]> {
  const workshop = await readWorkshop();
  const clock = coverClock(workshop, now);
  const [repair] = (await tallyBy('repair', clock)).toSorted((a, b) => b.units - a.units);
  const [lot] = (await tallyBy('lot', clock)).toSorted((a, b) => b.units - a.units);
  const [hand] = (await tallyBy('technician', clock)).toSorted((a, b) => b.units - a.units);
  if (!repair || !lot || !hand) throw new Error('nothing was sent back with a certificate');
  const ofRepair = { of: { grouping: 'repair', id: repair.id } } as const;
  const ofLot = { of: { grouping: 'lot', id: lot.id } } as const;
  const ofHand = { of: { grouping: 'technician', id: hand.id } } as const;
  const month = addDays(clock.today, -30).slice(0, 7);
  const last = Math.max(0, (await countRows(clock, {})).rows - ROWS_PER_PAGE);
  const [after] = await readRows(clock, {}, { skip: Math.floor(last / 2), take: 1 });
  if (!after) throw new Error('there are no rows');
  const rows = (narrowing: Parameters<typeof countRows>[1]) =>
    Promise.all([countRows(clock, narrowing), readRows(clock, narrowing, { skip: 0, take: ROWS_PER_PAGE })]);
  return [
    {
      page: 'returns: overview',
      read: () =>
        Promise.all([readRepairFigures(workshop, now), readLotFigures(clock), monthCounts(clock, 24)]),
    },
    {
      page: 'returns: one repair',
      read: () =>
        Promise.all([
          readRepairFigures(workshop, now, repair.id),
          readLearning(repair.id, clock, workshop.timeZone),
        ]),
    },
    { page: 'returns: by model', read: () => tallyBy('model', clock) },
    { page: 'returns: by part', read: () => tallyBy('part', clock) },
    { page: 'returns: by who did the work', read: () => tallyBy('technician', clock) },
    { page: 'returns: one lot', read: () => watchOf('lot', clock, ofLot) },
    { page: 'returns: rows, first page', read: () => rows({}) },
    { page: 'returns: rows of one repair', read: () => rows(ofRepair) },
    { page: 'returns: rows of one lot', read: () => rows(ofLot) },
    { page: 'returns: rows of one hand', read: () => rows(ofHand) },
    { page: 'returns: rows of one month', read: () => rows({ month }) },
    { page: 'returns: rows that came back', read: () => rows({ onlyReturns: true }) },
    {
      page: 'returns: last page of rows',
      read: () => readRows(clock, {}, { skip: last, take: ROWS_PER_PAGE }),
    },
    { page: 'returns: 5,000 rows of the file', read: () => readRows(clock, {}, { after, take: 5000 }) },
  ];
}
