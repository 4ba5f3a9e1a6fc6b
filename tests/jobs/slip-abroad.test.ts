import { beforeEach, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { slipData } from '@/lib/jobs/slip-data';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(() => makeWorkshop(NOW));
beforeEach(async () => {
  world = await begin();
}, 60_000);

it('a slip names the countries of both where the parcel crosses a border, and neither at home', async () => {
  const { jobId } = await makeBooking({ ...world, now: NOW });
  const ends = async () => {
    const { from, workshop } = await slipData(await jobNow(jobId));
    return [from.at(-1), workshop.address.at(-1)];
  };
  const home = await ends();
  const { customer } = await jobNow(jobId);
  await db.customer.update({ where: { id: customer.id }, data: { country: 'IE' } });
  expect(home).not.toContain('United Kingdom');
  expect(await ends()).toEqual(['Ireland', 'United Kingdom']);
});
