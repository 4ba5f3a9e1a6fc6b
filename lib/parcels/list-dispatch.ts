import { addDays, type Day, dayInZone, startOfDay } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { readKind } from '@/lib/jobs/records';
import { isOwedWaived } from '@/lib/jobs/rules/decision';
import { isHeldForMoney } from '@/lib/jobs/rules/guards';
import { waitsForAddress } from '@/lib/jobs/rules/handover';
import type { JobKind } from '@/lib/jobs/rules/stages';
import { ADDRESS_EVENTS } from '@/lib/jobs/stored-decision';
import { readWorkshop } from '@/lib/workshop/records';

export type DispatchRow = {
  number: string;
  kind: JobKind;
  unit: string;
  customer: string;
  /** town and country, as far as a list says where a parcel goes */
  town: string;
  country: string;
  readyOn: Day | null;
  /** still to pay, minor units; below zero is to be given back */
  owed: number;
  /** stays until that is paid */
  isHeld: boolean;
  /** its carrier brought it back, and its customer has not said where it should go */
  waitsForAddress: boolean;
  grams: number | null;
  carrier: string;
  reference: string;
  sentAt: Date | null;
};

export type DispatchDay = {
  today: Day;
  /** ready, and nothing holds it: may go today */
  mayGo: DispatchRow[];
  /** ready, and still to be paid for */
  waits: DispatchRow[];
  /** came back undelivered, and waits for its customer's answer: the address it went to is no good */
  asked: DispatchRow[];
  /** sent on the day, by carrier, both in order */
  sent: { carrier: string; rows: DispatchRow[] }[];
  /** collected by their customers on the day: no carrier was given them */
  collected: DispatchRow[];
};

const SHOWN = {
  number: true,
  kind: true,
  readyAt: true,
  sentBackAt: true,
  carrier: true,
  carrierReference: true,
  parcelGrams: true,
  model: { select: { maker: true, name: true } },
  customer: { select: { name: true, town: true, country: true } },
  quotes: { select: { revisions: { select: { state: true, grossMinor: true } } } },
  invoices: { select: { kind: true, payableMinor: true } },
  payments: { select: { amountMinor: true, purpose: true } },
  events: ADDRESS_EVENTS,
} satisfies Prisma.JobSelect;

/** More units than this at once are not a small workshop's; those that are ready longest are listed. */
const MOST_LISTED = 300;

/** What goes back, what waits for its money, and what was handed to carriers on one day of the workshop; today unless said. */
export async function listDispatch(o: { now: Date; day?: Day | null }): Promise<DispatchDay> {
  const { timeZone } = await readWorkshop();
  const today = dayInZone(o.now, timeZone);
  const on = o.day ?? today;
  const [ready, sent] = await Promise.all([
    db.job.findMany({
      where: { stage: 'ready' },
      orderBy: [{ readyAt: 'asc' }, { number: 'asc' }],
      select: SHOWN,
      take: MOST_LISTED,
    }),
    db.job.findMany({
      where: { sentBackAt: { gte: startOfDay(on, timeZone), lt: startOfDay(addDays(on, 1), timeZone) } },
      orderBy: [{ sentBackAt: 'asc' }, { number: 'asc' }],
      select: SHOWN,
      take: MOST_LISTED,
    }),
  ]);
  const left = sent.map((row) => shown(row, timeZone));
  const rows = ready.map((row) => shown(row, timeZone));
  return {
    today,
    mayGo: rows.filter((row) => !row.isHeld && !row.waitsForAddress),
    waits: rows.filter((row) => row.isHeld),
    asked: rows.filter((row) => !row.isHeld && row.waitsForAddress),
    sent: byCarrier(left.filter((row) => row.carrier !== '')),
    collected: left.filter((row) => row.carrier === ''),
  };
}

function byCarrier(rows: readonly DispatchRow[]): DispatchDay['sent'] {
  const carriers = [...new Set(rows.map((row) => row.carrier))].toSorted((a, b) => a.localeCompare(b));
  return carriers.map((carrier) => ({ carrier, rows: rows.filter((row) => row.carrier === carrier) }));
}

function shown(row: Prisma.JobGetPayload<{ select: typeof SHOWN }>, timeZone: string): DispatchRow {
  const { owed } = balanceOf(row);
  return {
    number: row.number,
    kind: readKind(row.kind),
    unit: unitName(row.model),
    customer: row.customer.name,
    town: row.customer.town,
    country: row.customer.country,
    readyOn: row.readyAt && dayInZone(row.readyAt, timeZone),
    owed,
    isHeld: isHeldForMoney({ owed, isOwedWaived: isOwedWaived(row.events) }),
    waitsForAddress: waitsForAddress(row.events),
    grams: row.parcelGrams,
    carrier: row.carrier,
    reference: row.carrierReference,
    sentAt: row.sentBackAt,
  };
}
