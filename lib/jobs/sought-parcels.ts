import { type Day, dayInZone, daysBetween } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import type { Prisma } from '@/lib/db/generated/client';
import { readKind } from './records';
import type { JobKind } from './rules/stages';

/** A parcel on its way back that its carrier is asked for. */
export type SoughtParcel = {
  number: string;
  kind: JobKind;
  unit: string;
  customer: string;
  carrier: string;
  reference: string;
  sentBackOn: Day | null;
  since: Day;
  days: number;
};

export const SOUGHT = {
  number: true,
  kind: true,
  sentBackAt: true,
  soughtSince: true,
  carrier: true,
  carrierReference: true,
  model: { select: { maker: true, name: true } },
  customer: { select: { name: true } },
} satisfies Prisma.JobSelect;

/** Those of the rows that are looked for, the longest sought first. */
export function soughtParcels(
  rows: readonly Prisma.JobGetPayload<{ select: typeof SOUGHT }>[],
  { timeZone, today }: { timeZone: string; today: Day },
): SoughtParcel[] {
  return rows
    .flatMap(({ soughtSince, ...row }) =>
      soughtSince === null ? [] : [{ ...row, since: dayInZone(soughtSince, timeZone) }],
    )
    .map(({ since, ...row }) => ({
      number: row.number,
      kind: readKind(row.kind),
      unit: unitName(row.model),
      customer: row.customer.name,
      carrier: row.carrier,
      reference: row.carrierReference,
      sentBackOn: row.sentBackAt && dayInZone(row.sentBackAt, timeZone),
      since,
      days: daysBetween(since, today),
    }))
    .toSorted((a, b) => b.days - a.days);
}
