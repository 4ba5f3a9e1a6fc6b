import { beforeEach, expect, test } from 'vitest';
import { leaveBeside } from '@/lib/bench/leave-beside';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { db } from '@/lib/db/client';
import { eventLine } from '@/lib/jobs/rules/events';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { coverClock } from '@/lib/returns/cover-clock';
import { readLearning } from '@/lib/returns/lessons';
import { countByVersion } from '@/lib/returns/version-counts';
import { learnFromClaim } from '@/lib/warranty/learn';
import { readTaughtRepairs } from '@/lib/warranty/stored-taught-repairs';
import { readWorkshop } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { askPrice } from '@/tests/makers/offer';
import { makeFaderRepair } from '@/tests/makers/second-repair';
import { FADER, makeBothDone, sendBothBack } from '@/tests/makers/two-repairs';
import { jobNow, makeCertificate, makeClaim, moveTo, ruleClaim, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const now = new Date('2026-11-25T09:00:00Z');
const LATER = new Date('2026-11-26T09:00:00Z');
const CLAIMED = new Date('2026-12-10T09:00:00Z');
const SEEN = new Date('2027-04-01T10:00:00Z');
const WARM: CheckDraft = {
  kind: 'tick',
  label: 'Fader runs silently when warm',
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
};

useDatabase();
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let fader: Awaited<ReturnType<typeof makeFaderRepair>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(now);
  return { world, fader: await makeFaderRepair(world, now) };
});
beforeEach(async () => {
  ({ world, fader } = await begin());
}, 30_000);

/** A unit on which socket and fader were done, sent back; gives its certificate. */
async function both() {
  const jobId = await makeBothDone(world, { now, later: LATER });
  return sendBothBack(jobId, fader, { now, later: LATER });
}

/** The same, back on a claim that is ruled on. */
async function claimed(
  number: string,
  o: { symptom: string; cause?: 'workmanship' | 'damage-after-return'; alsoFound?: 'separate-fault' },
) {
  const claim = await makeClaim({ number, symptom: o.symptom, now: CLAIMED });
  await takeIn(claim.jobId, CLAIMED);
  await moveTo(claim.jobId, 'assess', CLAIMED);
  await ruleClaim(claim, { cause: 'workmanship', ...o, now: CLAIMED });
  return claim;
}

const learn = (claimId: string, repairId: string) =>
  learnFromClaim({ claimId, repairId, basedOn: 1, check: WARM, replaces: null, actor: BENCH, now: CLAIMED });

const clock = async () => coverClock(await readWorkshop(), SEEN);
const counts = async (repairId: string) =>
  (await countByVersion(repairId, await clock())).map(({ version, watched, returned }) => [
    version,
    watched,
    returned,
  ]);
const lessonsOf = async (repairId: string) => {
  const { checks, claims, ruled } = await readLearning(repairId, await clock(), 'Europe/London');
  return { checks: checks.map(({ label, before }) => [label, before]), claims, ruled };
};

test('a claim teaches the sheet of the repair that was done beside, and its own stays as it is', async () => {
  const claim = await claimed(await both(), { symptom: 'A fader scratches' });
  expect(await learn(claim.claimId, fader.repairId)).toBe(2);
  const sheet = await db.checkSheet.findFirstOrThrow({
    where: { repairId: fader.repairId, version: 2 },
    select: { checks: { orderBy: { position: 'asc' }, select: { label: true, lesson: true } } },
  });
  expect(sheet.checks).toEqual([
    { label: 'Fader runs silently', lesson: null },
    { label: WARM.label, lesson: claim.number },
  ]);
  expect(await db.checkSheet.count({ where: { repairId: world.repairId } })).toBe(1);
  const event = (await jobNow(claim.jobId)).events.at(-1);
  expect(eventLine('check-taught', event?.data)).toBe(
    `Put on version 2 of the check sheet of “Fader replaced”: ${WARM.label}`,
  );
});

test('it can teach those sheets its unit was proved on, the job’s own first, though the bench left one out since', async () => {
  const number = await both();
  const claim = await claimed(number, { symptom: 'other' });
  const names = async () =>
    (await readTaughtRepairs({ jobId: claim.jobId, certificateNumber: number })).map(({ name }) => name);
  expect(await names()).toEqual(['USB-C socket replaced', 'Fader replaced']);
  const { version, besides } = await jobNow(claim.jobId);
  const besideId = besides[0]?.id ?? '';
  await leaveBeside({ jobId: claim.jobId, version, besideId, actor: BENCH, now: CLAIMED });
  expect(await names()).toEqual(['USB-C socket replaced', 'Fader replaced']);
});

test('it cannot teach the sheet of a repair that was not done', async () => {
  const { number } = await makeCertificate(world, LATER);
  const claim = await claimed(number, { symptom: 'Does not charge' });
  await expect(learn(claim.claimId, fader.repairId)).rejects.toMatchObject({ code: 'invalid' });
  expect(await db.checkSheet.count({ where: { version: 2 } })).toBe(0);
});

test('Returns counts a unit on the sheets of both, and as come back for the one beside where that failed again', async () => {
  await claimed(await both(), { symptom: 'A fader scratches' });
  await claimed(await both(), { symptom: 'Does not charge' });
  await claimed(await both(), { symptom: 'A fader scratches', cause: 'damage-after-return' });
  await both();
  expect(await counts(fader.repairId)).toEqual([[1, 4, 1]]);
  expect(await counts(world.repairId)).toEqual([[1, 4, 2]]);
}, 60_000);

test('Returns has the lesson with the repair whose sheet it is on, and says so at the other', async () => {
  const claim = await claimed(await both(), { symptom: 'Does not charge' });
  expect(await counts(fader.repairId)).toEqual([[1, 1, 0]]);
  await learn(claim.claimId, fader.repairId);
  expect(await counts(fader.repairId)).toEqual([[1, 1, 1]]);
  expect(await lessonsOf(fader.repairId)).toMatchObject({
    checks: [[WARM.label, { units: 1, returned: 1 }]],
    claims: [{ number: claim.number, check: { label: WARM.label, isElsewhere: false } }],
    ruled: 1,
  });
  expect(await lessonsOf(world.repairId)).toMatchObject({
    checks: [],
    claims: [{ number: claim.number, check: { label: WARM.label, isElsewhere: true } }],
    ruled: 1,
  });
});

test('a claim of which the fader failed again is with both repairs, though it taught nothing', async () => {
  const claim = await claimed(await both(), { symptom: 'A fader scratches' });
  for (const repairId of [fader.repairId, world.repairId])
    expect(await lessonsOf(repairId)).toMatchObject({
      claims: [{ number: claim.number, check: null }],
      ruled: 1,
    });
});

test('work beside a claim that its customer paid for is no return of that repair', async () => {
  const claim = await claimed(await both(), { symptom: 'Does not charge', alsoFound: 'separate-fault' });
  const revision = await askPrice(claim.jobId, CLAIMED, { lines: [FADER] });
  await decideOffer({
    jobId: claim.jobId,
    revision,
    decision: 'accepted',
    isTermsAccepted: true,
    actor: { kind: 'customer' },
    now: CLAIMED,
  });
  expect((await jobNow(claim.jobId)).besides).toMatchObject([{ isByPrice: true }]);
  expect(await counts(fader.repairId)).toEqual([[1, 1, 0]]);
  expect(await lessonsOf(fader.repairId)).toMatchObject({ claims: [], ruled: 0 });
});
