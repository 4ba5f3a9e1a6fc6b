import { addDays, type Day, dayFromDate, partsOf } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import type { WorkingCalendar } from '@/lib/calendar/working';
import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { LOOK_BACK_DAYS } from '@/lib/promise/records';
import { rememberFor } from '@/lib/remembered';
import { blankWorkshop, type WorkshopCard } from './card';
import { closures, closureToTell } from './rules/closures';

export type { Paper, WorkshopCard } from './card';

/** The workshop and its settings; placeholders while its owner has not saved any. */
export async function readWorkshop(client: Tx = db): Promise<WorkshopCard> {
  const row = await client.workshop.findUnique({ where: { id: 1 } });
  if (!row) return blankWorkshop;
  return { ...row, paper: row.paper === 'LETTER' ? 'LETTER' : 'A4' };
}

/**
 * The same, held until the transaction ends: for whoever says money to a customer, so that the currency in which they do
 * cannot change meanwhile (lib/workshop/write-currency.ts). Others hold it beside them; a save of the settings waits.
 */
export async function readHeldWorkshop(tx: Tx): Promise<WorkshopCard> {
  const [row] = await tx.$queryRaw<WorkshopCard[]>`SELECT * FROM "workshop" WHERE "id" = 1 FOR SHARE`;
  return row ? { ...row, paper: row.paper === 'LETTER' ? 'LETTER' : 'A4' } : blankWorkshop;
}

/** False until the settings have been saved once. */
export async function isWorkshopSetUp(client: Tx = db): Promise<boolean> {
  return (await client.workshop.count({ where: { id: 1 } })) > 0;
}

export type ClosingDayRow = { day: Day; name: string };

/** Days on which the workshop is closed besides public holidays, earliest first. */
export async function readClosingDays(client: Tx = db): Promise<ClosingDayRow[]> {
  const rows = await client.closingDay.findMany({
    select: { day: true, name: true },
    orderBy: { day: 'asc' },
  });
  return rows.map((row) => ({ day: dayFromDate(row.day), name: row.name }));
}

const calendars = rememberFor<WorkingCalendar>(60_000);
/** No row of public holidays is longer. */
const ROLLED_DAYS = 31;

/**
 * Working days of the workshop around a day: from as far back as promises look, and at least the year before it, to the end
 * of the second year after it. `also` are days further off at which one has to be known too, each with the month after it,
 * since a last day is rolled onward; the years between are left out.
 *
 * Kept for a minute per process: holidays of four years take tens of milliseconds to work out and pages ask often. A
 * further year costs its share once and is remembered (lib/calendar/holidays.ts), so only who needs it asks for it.
 * Inside a transaction pass its client, because the embedded database serves one session at a time.
 */
export async function readCalendar(
  workshop: Pick<WorkshopCard, 'holidayCountry' | 'holidayRegion'>,
  around: Day,
  client: Tx = db,
  also: readonly Day[] = [],
): Promise<WorkingCalendar> {
  const { year } = partsOf(around);
  const lookedBack = partsOf(addDays(around, -LOOK_BACK_DAYS)).year;
  const further = also.flatMap((each) => [partsOf(each).year, partsOf(addDays(each, ROLLED_DAYS)).year]);
  const years = [...new Set([lookedBack, year - 1, year, year + 1, year + 2, ...further])].sort(
    (a, b) => a - b,
  );
  const key = `${workshop.holidayCountry}/${workshop.holidayRegion}/${years.join()}`;
  return calendars.of(key, new Date(), async () =>
    holidayCalendar({
      country: workshop.holidayCountry,
      region: workshop.holidayRegion || undefined,
      years,
      closingDays: await readClosingDays(client),
    }),
  );
}

const closings = rememberFor<ClosingDayRow[]>(60_000);

/** The closure that customers are told of now; closing days are kept for a minute, since the front page asks. */
export async function readClosureToTell(
  workshop: Pick<WorkshopCard, 'holidayCountry' | 'holidayRegion'>,
  today: Day,
): Promise<ReturnType<typeof closureToTell>> {
  const [days, calendar] = await Promise.all([
    closings.of('all', new Date(), readClosingDays),
    readCalendar(workshop, today),
  ]);
  return closureToTell(closures(days, calendar), { today, calendar });
}

/** Makes the next reading see changed closing days or holidays at once. */
export function forgetCalendars(): void {
  calendars.forget();
  closings.forget();
}
