import { expect, test } from 'vitest';
import { PromisePart } from '@/app/workshop/(inside)/jobs/[number]/promise-part';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { listPromisesToMove } from '@/lib/jobs/list-promises-to-move';
import { movePromise } from '@/lib/jobs/move-promise';
import { recordFinding } from '@/lib/jobs/record-finding';
import { readToday } from '@/lib/jobs/today';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
/** The day of the claim has gone by. */
const LATER = new Date('2027-03-01T10:00:00Z');

test('the workshop is not asked to keep or to move the day of a claim that its ruling called off', async () => {
  const { number } = await makeCertificate(await makeWorkshop(SENT), SENT);
  const claim = await makeClaim({ number, now: NOW });
  const { jobId } = claim;
  await takeIn(jobId, NOW);
  await moveTo(jobId, 'assess', NOW);
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  const workshop = await readWorkshop();
  const job = (await jobNow(jobId)).number;
  const toMove = async () =>
    (await listPromisesToMove(workshop, LATER)).toMove.map(({ promise }) => promise.number);
  const late = async () => {
    const { lists } = await readToday(LATER);
    const row = [...lists.late, ...lists.claims, ...lists.onUs].find((each) => each.job.number === job);
    return row && row.promiseLate > 0;
  };
  const part = async () => PromisePart({ job: await jobNow(jobId), workshop, staff: new Map() });
  expect(await toMove()).toEqual([job]);
  expect(await late()).toBe(true);
  expect(await part()).not.toBeNull();

  await ruleClaim(claim, { cause: 'separate-fault', now: NOW });
  expect(await toMove()).toEqual([]);
  expect(await late()).toBe(false);
  expect(await part()).toBeNull();
  const { version } = await jobNow(jobId);
  await expect(
    movePromise({ jobId, version, to: day('2027-03-08'), reason: 'Late', actor: BENCH, now: LATER }),
  ).rejects.toMatchObject({ code: 'invalid', field: 'to' });
  expect(await db.mail.count({ where: { jobId, template: 'promise-moved' } })).toBe(0);
}, 60_000);
