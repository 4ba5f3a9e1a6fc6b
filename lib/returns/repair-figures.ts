import type { RiskCount } from '@/lib/statistics/survival';
import type { WorkshopCard } from '@/lib/workshop/card';
import { coverClock } from './cover-clock';
import { type RepairTerms, readRepairTerms } from './repair-terms';
import { type RepairWorth, repairWorth } from './rules/repair-worth';
import { addToPrice, type ReserveAnswer, reserveFor } from './rules/reserve';
import { endedOfTerm, type Spent, type YearAgainstReserve, yearAgainstReserve } from './rules/year';
import { type Tally, watchedTallies } from './tallies';
import { yearByRepair } from './year';

export type RepairFigure = {
  terms: RepairTerms;
  tally: Tally;
  watch: readonly RiskCount[];
  reserve: ReserveAnswer;
  worth: RepairWorth;
  /** to put on the price without tax, minor units; null while too little was watched to say */
  addMinor: number | null;
  /** the last 365 days, its claims those opened in it; nothing to hold it against while no reserve is known */
  year: Spent & { sent: number; against: YearAgainstReserve | null };
};

/** Every repair that was sent back at least once, in the catalogue's order: what came back, what it costs, what to add. */
export async function readRepairFigures(
  workshop: WorkshopCard,
  now: Date,
  repairId?: string,
): Promise<RepairFigure[]> {
  const clock = coverClock(workshop, now);
  const narrowing = repairId ? { of: { grouping: 'repair' as const, id: repairId } } : {};
  const [tallies, years] = await Promise.all([
    watchedTallies('repair', clock, narrowing),
    yearByRepair(clock, repairId),
  ]);
  // Only then: of a long price list few repairs may ever have been sent back.
  const terms = await readRepairTerms(
    workshop,
    clock.today,
    tallies.map(({ id }) => id),
  );
  const watchedOf = new Map(tallies.map(({ watch, costs, ...tally }) => [tally.id, { watch, costs, tally }]));
  const yearOf = new Map(years.map((year) => [year.repairId, year]));
  return terms.flatMap((term) => {
    const watched = watchedOf.get(term.id);
    if (!watched) return [];
    const { tally, watch, costs } = watched;
    const reserve: ReserveAnswer =
      term.termDays === null
        ? { known: false, reason: 'not-watched' }
        : reserveFor({
            counts: watch,
            termDays: term.termDays,
            costs,
            plannedCostMinor: term.plannedClaimMinor,
          });
    const worth = repairWorth({
      netMinor: term.netMinor,
      plannedMinor: term.plannedMinor,
      reserve,
      returned: tally.returned,
      watch,
      termDays: term.termDays,
    });
    const { sent, spentMinor, uncosted, ended } = yearOf.get(term.id) ?? NOTHING;
    const year = { sent, spentMinor, uncosted };
    return [
      {
        terms: term,
        tally,
        watch,
        reserve,
        worth,
        addMinor:
          reserve.known && worth.carries !== 'too-few'
            ? addToPrice(reserve.reserve.upperMinor, workshop.currency)
            : null,
        year: {
          ...year,
          against:
            reserve.known && term.termDays !== null
              ? yearAgainstReserve({
                  ...year,
                  reserve: reserve.reserve,
                  ended: endedOfTerm(ended, term.termDays),
                })
              : null,
        },
      },
    ];
  });
}

const NOTHING = { sent: 0, spentMinor: 0, uncosted: 0, ended: [] };
