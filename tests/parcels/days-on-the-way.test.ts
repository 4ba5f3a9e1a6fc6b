import { beforeEach, expect, it } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { dispatch } from '@/lib/warranty/dispatch';
import { useDatabase } from '@/tests/database';

import { jobNow } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';
import { makeReady } from './ready';

// A Wednesday; the working days of these weeks are Mondays to Fridays, without a holiday.
const NOW = new Date('2027-01-13T09:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(NOW);
  await db.policyVersion.updateMany({ data: { startEvent: 'delivered' } });
  await db.carrier.create({
    data: {
      name: 'Skiff Parcels',
      divisor: 5000,
      maxGrams: 20_000,
      longestSideMm: 1000,
      maxValueMinor: 50_000,
      daysHome: 2,
      daysAbroad: 7,
    },
  });
  return world;
});
beforeEach(async () => {
  world = await begin();
}, 60_000);

it.each([
  ['at home with a carrier of the list', 'GB', 'skiff parcels', '2027-01-15'],
  ['abroad with it', 'DK', 'skiff parcels', '2027-01-22'],
  ['at home with another', 'GB', 'Harbour Post', '2027-01-20'],
  ['abroad with another', 'DK', 'Harbour Post', '2027-02-10'],
])(
  'cover that starts with delivery starts with its latest usual day: %s',
  async (_name, country, carrier, startsOn) => {
    const { jobId } = await makeReady(world, NOW, { serial: 'HW2-70006-E' });
    const { customer, version } = await jobNow(jobId);
    await db.customer.update({ where: { id: customer.id }, data: { country } });
    const handover = { by: 'carrier', carrier, carrierReference: 'SK-2201' } as const;
    const { certificate } = await dispatch({ jobId, version, handover, postage: 0, actor: BENCH, now: NOW });
    const line = await db.certificateLine.findFirstOrThrow({
      where: { certificate: { number: certificate?.number ?? '' } },
    });
    expect(dayFromDate(line.startsOn)).toBe(startsOn);
  },
  60_000,
);
