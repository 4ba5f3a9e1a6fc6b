import { type Day, daysBetween } from '@/lib/calendar/day';
import { addPeriod } from '@/lib/calendar/period';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { WorkshopCard } from '@/lib/workshop/card';
import { netPrice } from './rules/repair-worth';

/** What the catalogue says of a repair today. Money in minor units. */
export type RepairTerms = {
  id: string;
  name: string;
  model: string;
  priceMinor: number;
  netMinor: number;
  /** bench time at the cost of an hour, and the usual parts at what they were bought for last */
  plannedMinor: number;
  /** what a claim on it would cost: the same work, and postage both ways; null where the catalogue does not say */
  plannedClaimMinor: number | null;
  /** the longest term that its policy gives, counted from today; null where it gives none */
  termDays: number | null;
};

/** The catalogue's side of the reserve: one row for each repair asked for. */
export async function readRepairTerms(
  workshop: WorkshopCard,
  today: Day,
  ids: readonly string[],
): Promise<RepairTerms[]> {
  const rows = await db.repair.findMany({
    where: { id: { in: [...ids] } },
    orderBy: [{ model: { name: 'asc' } }, { name: 'asc' }],
    select: {
      id: true,
      name: true,
      priceMinor: true,
      taxRateBps: true,
      minutes: true,
      model: { select: { maker: true, name: true } },
      policy: {
        select: {
          versions: {
            orderBy: { version: 'desc' },
            take: 1,
            select: { workTerm: true, partsTerm: true },
          },
        },
      },
      usualParts: {
        select: {
          quantity: true,
          part: {
            select: {
              lots: { orderBy: { receivedOn: 'desc' }, take: 1, select: { unitCostMinor: true } },
            },
          },
        },
      },
    },
  });
  return rows.map(({ model, policy, usualParts, taxRateBps, minutes, ...row }) => {
    const labour = Math.floor((minutes * workshop.labourRateMinor + 30) / 60);
    const parts = usualParts.reduce(
      (sum, { quantity, part }) => sum + quantity * (part.lots[0]?.unitCostMinor ?? 0),
      0,
    );
    const terms = [policy.versions[0]?.workTerm, policy.versions[0]?.partsTerm].flatMap((term) =>
      term ? [daysBetween(today, addPeriod(today, term))] : [],
    );
    return {
      id: row.id,
      name: row.name,
      model: unitName(model),
      priceMinor: row.priceMinor,
      netMinor: netPrice(row.priceMinor, taxRateBps, workshop.pricesIncludeTax),
      plannedMinor: labour + parts,
      // What a parcel costs nobody has typed in; the fee for sending a unit back stands for it, once each way.
      plannedClaimMinor: labour + parts > 0 ? labour + parts + 2 * workshop.returnFeeMinor : null,
      termDays: terms.length > 0 ? Math.max(...terms) : null,
    };
  });
}
