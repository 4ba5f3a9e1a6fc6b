import { beforeAll, expect, it } from 'vitest';
import { day, dayFromDate } from '@/lib/calendar/day';
import { movePromise } from '@/lib/jobs/move-promise';
import { undoArrival } from '@/lib/jobs/undo-arrival';
import { readKept } from '@/lib/promise/stored-kept';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-11-25T09:00:00Z');
let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(NOW);
}, 60_000);

it('judges a unit by what was promised when it came, not when another was taken in for it', async () => {
  const { jobId } = await makeBooking({ repairId: world.repairId, now: NOW });
  await takeIn(jobId, NOW);
  const call = async () => ({
    jobId,
    version: (await jobNow(jobId)).version,
    reason: 'Late.',
    actor: BENCH,
    now: NOW,
  });
  await movePromise({ ...(await call()), to: day('2026-12-23') });
  await undoArrival(await call());
  await takeIn(jobId, new Date('2027-01-11T09:00:00Z'));
  const { promisedOn } = await jobNow(jobId);
  const month = promisedOn ? dayFromDate(promisedOn).slice(0, 7) : '';
  expect(month).toBe('2027-01');
  const kept = await readKept(new Date('2027-02-15T09:00:00Z'), await readWorkshop());
  expect(kept).toEqual([{ month, promises: 1, kept: 0, notReady: 1 }]);
});
