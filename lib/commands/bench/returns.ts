import { coverClock } from '@/lib/returns/cover-clock';
import { readLearning } from '@/lib/returns/lessons';
import { monthCounts } from '@/lib/returns/months';
import { countRows, ROWS_PER_PAGE, readRows } from '@/lib/returns/read-rows';
import { readRepairFigures } from '@/lib/returns/repair-figures';
import { tallyBy, watchOf } from '@/lib/returns/tallies';
import { readWorkshop } from '@/lib/workshop/records';

/** One reading of the returns room; the times are milliseconds, the fastest, the middle and the slowest run. */
export type ReturnsTiming = { what: string; fastest: number; median: number; slowest: number };

const RUNS = 7;

/**
 * How long the readings of the returns room take on the database that is configured, the first run left out. What a page
 * reads side by side is timed side by side.
 */
export async function timeReturns(now: Date): Promise<ReturnsTiming[]> {
  const workshop = await readWorkshop();
  const clock = coverClock(workshop, now);
  const [repair] = (await tallyBy('repair', clock)).toSorted((a, b) => b.units - a.units);
  const [lot] = (await tallyBy('lot', clock)).toSorted((a, b) => b.units - a.units);
  if (!repair || !lot) throw new Error('nothing was sent back with a certificate: fill the database first');
  const ofRepair = { of: { grouping: 'repair', id: repair.id } } as const;
  const ofLot = { of: { grouping: 'lot', id: lot.id } } as const;
  const firstPage = { skip: 0, take: ROWS_PER_PAGE };
  const readings: [what: string, read: () => Promise<unknown>][] = [
    [
      'overview: repairs, lots, months',
      () => Promise.all([readRepairFigures(workshop, now), tallyBy('lot', clock), monthCounts(clock, 24)]),
    ],
    [
      'one repair: curve, costs, lessons',
      () =>
        Promise.all([
          readRepairFigures(workshop, now, repair.id),
          readLearning(repair.id, clock, workshop.timeZone),
        ]),
    ],
    ['by model', () => tallyBy('model', clock)],
    ['by policy', () => tallyBy('policy', clock)],
    ['by part', () => tallyBy('part', clock)],
    ['by lot', () => tallyBy('lot', clock)],
    ['by supplier', () => tallyBy('supplier', clock)],
    ['by who did the work', () => tallyBy('technician', clock)],
    ['one lot: curve', () => watchOf('lot', clock, ofLot)],
    ['rows, first page', () => rowsPage({})],
    ['rows of one repair', () => rowsPage(ofRepair)],
    ['rows of one lot', () => rowsPage(ofLot)],
  ];
  const rowsPage = (narrowing: Parameters<typeof countRows>[1]) =>
    Promise.all([countRows(clock, narrowing), readRows(clock, narrowing, firstPage)]);
  const timings: ReturnsTiming[] = [];
  for (const [what, read] of readings) timings.push({ what, ...(await timed(read)) });
  return timings;
}

async function timed(read: () => Promise<unknown>): Promise<Omit<ReturnsTiming, 'what'>> {
  await read();
  const times: number[] = [];
  for (let run = 0; run < RUNS; run += 1) {
    const start = performance.now();
    await read();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return { fastest: times[0] ?? 0, median: times[(RUNS - 1) / 2] ?? 0, slowest: times[RUNS - 1] ?? 0 };
}

/** The readings at a small and a large size in one table, with how much longer the large one takes. */
export function returnsTable(small: readonly ReturnsTiming[], large: readonly ReturnsTiming[]): string[] {
  return large.map(({ what, median, slowest }) => {
    const before = small.find((each) => each.what === what)?.median ?? Number.NaN;
    return `| ${what} | ${before.toFixed(0)} ms | ${median.toFixed(0)} ms | ${slowest.toFixed(0)} ms | ${(median / before).toFixed(1)} × |`;
  });
}
