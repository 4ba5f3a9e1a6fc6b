import { beforeEach, expect, test } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { lookAgain } from '@/lib/warranty/look-again';
import { nameRenewed } from '@/lib/warranty/name-renewed';
import { readChain } from '@/lib/warranty/records';
import { renewalView } from '@/lib/warranty/renewal-view';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { SERIAL } from '@/tests/makers/job';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-11-20T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let number = '';
let claim: Awaited<ReturnType<typeof makeClaim>>;
// Work and a part, claimed with a symptom that names neither, so that the rule renews the work alone.
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const { number } = await makeCertificate(world, SENT, SERIAL, 1);
  const claim = await makeClaim({ number, now: NOW, symptom: 'other' });
  await takeIn(claim.jobId, NOW);
  await moveTo(claim.jobId, 'assess', NOW);
  return { world, number, claim };
});
beforeEach(async () => {
  ({ world, number, claim } = await begin());
}, 60_000);

const name = async (lines: string[], actor: typeof OWNER | typeof BENCH = BENCH) =>
  nameRenewed({
    claimId: claim.claimId,
    jobVersion: (await jobNow(claim.jobId)).version,
    lines,
    actor,
    now: NOW,
  });

async function view() {
  const job = await jobNow(claim.jobId);
  const chain = await readChain(number);
  if (!job.claim || !chain) throw new Error('no claim');
  return renewalView({ job, claim: job.claim, chain }, { workshop: await readWorkshop(), now: NOW });
}

/** Repairs and sends it back; which lines the next revision renewed. */
async function renewed() {
  await moveTo(claim.jobId, 'start-bench', NOW);
  await proveJob(claim.jobId, world, NOW);
  expect((await sendBack(claim.jobId, NOW)).certificate).toEqual({ number, revision: 2 });
  const { lines } = await db.certificate.findUniqueOrThrow({
    where: { number_revision: { number, revision: 2 } },
    select: { lines: { orderBy: { position: 'asc' } } },
  });
  return lines.filter(({ renewedUntil }) => renewedUntil !== null);
}

test('what nobody names is renewed by its symptom', async () => {
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  expect((await renewed()).map(({ key }) => key)).toEqual(['work-1']);
}, 60_000);

test('what was done again is named by the bench, shown with its days, and renewed to just those', async () => {
  await expect(name(['work-1'])).rejects.toMatchObject({ code: 'conflict' });
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  expect((await view()).map(({ id, isRenewed }) => [id, isRenewed])).toEqual([
    ['work-1', true],
    ['part-1', false],
  ]);
  await expect(name(['part-1'])).rejects.toMatchObject({ code: 'not-allowed', field: 'lines' });
  await name(['work-1', 'part-1']);
  const shown = await view();
  expect(shown.map(({ isRenewed }) => isRenewed)).toEqual([true, true]);
  expect(shown.every(({ until, renewedUntil }) => renewedUntil > until)).toBe(true);
  const event = await db.jobEvent.findFirstOrThrow({
    where: { jobId: claim.jobId, kind: 'renewal-named' },
    select: { data: true, actorId: true },
  });
  expect(event.actorId).toBe(BENCH.id);
  expect(event.data).toMatchObject({ lines: expect.arrayContaining([expect.any(String)]) });
  const lines = await renewed();
  expect(lines.map(({ key, renewedUntil }) => [key, renewedUntil && dayFromDate(renewedUntil)])).toEqual(
    shown.map(({ id, renewedUntil }) => [id, renewedUntil]),
  );
  await expect(name(['work-1'])).rejects.toMatchObject({ code: 'conflict' });
}, 60_000);

test('the owner may leave out what the symptom says, and a ruling taken back takes the naming with it', async () => {
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  await name(['part-1'], OWNER);
  expect((await view()).map(({ isRenewed }) => isRenewed)).toEqual([false, true]);
  const { version } = await jobNow(claim.jobId);
  const again = { claimId: claim.claimId, jobVersion: version, reason: 'Another cause.', now: NOW };
  await lookAgain({ ...again, actor: OWNER });
  await ruleClaim(claim, { cause: 'fitted-part', now: NOW });
  expect((await view()).map(({ isRenewed }) => isRenewed)).toEqual([true, false]);
  await name(['part-1'], OWNER);
  expect((await renewed()).map(({ key }) => key)).toEqual(['part-1']);
}, 60_000);

test('what the owner named is added to by the bench, and not taken away, whoever named last', async () => {
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  await name(['part-1'], OWNER);
  await name(['work-1', 'part-1']);
  await expect(name(['work-1'])).rejects.toMatchObject({ code: 'not-allowed' });
  await name(['part-1']);
  expect((await view()).map(({ isRenewed }) => isRenewed)).toEqual([false, true]);
}, 60_000);
