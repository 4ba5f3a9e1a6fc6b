import { beforeEach, describe, expect, it } from 'vitest';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import { db } from '@/lib/db/client';
import { attempt } from '@/lib/outcome';
import { inspect } from '@/lib/warranty/inspect';
import { learnFromClaim } from '@/lib/warranty/learn';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import type { Cause } from '@/lib/warranty/rules/causes';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { useDatabase } from '@/tests/database';
import { makeBooking, SERIAL } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim, moveTo, proveJob, somePhoto, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');

const PULL: CheckDraft = {
  kind: 'reading',
  label: 'Force at which the plug comes out',
  help: 'Pull straight with the spring balance.',
  unit: 'N',
  low: 8,
  high: 20,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
};
const LOOK: CheckDraft = {
  ...PULL,
  kind: 'choice',
  label: 'Anchors under the glass',
  unit: null,
  low: null,
  high: null,
  choices: ['filled', 'half filled'],
  passing: ['filled'],
};
const TILT: CheckDraft = {
  ...PULL,
  kind: 'tick',
  label: 'Holds when warm',
  unit: null,
  low: null,
  high: null,
};

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let claim: Awaited<ReturnType<typeof makeClaim>>;
let firstJob = '';

const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const certificate = await makeCertificate(world, SENT, SERIAL);
  const firstJob = certificate.jobId;
  const claim = await makeClaim({ number: certificate.number, now: NOW });
  await takeIn(claim.jobId, NOW);
  await moveTo(claim.jobId, 'assess', NOW);
  return { world, firstJob, claim };
});
beforeEach(async () => {
  ({ world, firstJob, claim } = await begin());
}, 120_000);

async function rule(cause: Cause, o: { isAgreed?: boolean; alsoFound?: 'separate-fault' } = {}) {
  const { claimId, jobId } = claim;
  const version = async () => (await jobNow(jobId)).version;
  await inspect({
    claimId,
    item: 'outside-damage',
    answer: 'no',
    note: '',
    photo: somePhoto(),
    actor: BENCH,
    now: NOW,
  });
  await ruleOnClaim({
    claimId,
    jobVersion: await version(),
    cause,
    alsoFound: o.alsoFound ?? null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'The photo shows what we found on the unit.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
  if (o.isAgreed)
    await takeSecondLook({ claimId, jobVersion: await version(), isConfirmed: true, actor: OWNER, now: NOW });
}

const learn = (over: Partial<Parameters<typeof learnFromClaim>[0]> = {}) =>
  learnFromClaim({
    claimId: claim.claimId,
    repairId: world.repairId,
    basedOn: 1,
    check: PULL,
    replaces: null,
    actor: BENCH,
    now: NOW,
    ...over,
  });

async function sheet(version: number) {
  const { checks } = await db.checkSheet.findUniqueOrThrow({
    where: { repairId_version: { repairId: world.repairId, version } },
    include: { checks: { orderBy: { position: 'asc' } } },
  });
  return checks;
}

async function refusalOf(over: Partial<Parameters<typeof learnFromClaim>[0]> = {}) {
  const outcome = await attempt(() => learn(over));
  return outcome.ok ? null : outcome.refusal.code;
}

describe('a covered claim teaches a check', () => {
  it.each([
    ['a reading with limits', PULL],
    ['a choice', LOOK],
    ['a tick', TILT],
  ])('as %s at the end of the next version, with the claim’s number', async (_name, check) => {
    await rule('workmanship');
    expect(await learn({ check })).toBe(2);
    const checks = await sheet(2);
    expect(checks.map(({ label, lesson }) => [label, lesson])).toEqual([
      ['Charge voltage', null],
      ['Cable holds when tilted', null],
      [check.label, claim.number],
    ]);
    const { label: _, lesson: __, ...rest } = check;
    expect(checks[2]).toMatchObject(rest);
  });

  it('even one that is covered only partly', async () => {
    await rule('workmanship', { alsoFound: 'separate-fault', isAgreed: true });
    expect(await learn()).toBe(2);
  });

  it('as often as there is something to learn', async () => {
    await rule('workmanship');
    await learn();
    expect(await learn({ basedOn: 2, check: TILT })).toBe(3);
    expect((await sheet(3)).filter((check) => check.lesson === claim.number)).toHaveLength(2);
  });

  it('and the history of its job says who did', async () => {
    await rule('workmanship');
    await learn();
    const event = await db.jobEvent.findFirstOrThrow({ where: { jobId: claim.jobId, kind: 'check-taught' } });
    expect(event).toMatchObject({
      actorId: BENCH.id,
      data: { claim: claim.number, check: PULL.label, version: 2 },
    });
  });

  it('for units booked from now on; those already here keep the version they came under', async () => {
    await rule('workmanship');
    const before = await jobNow(firstJob);
    await learn();
    expect((await jobNow(firstJob)).sheet).toEqual(before.sheet);
    expect((await jobNow(claim.jobId)).sheet.version).toBe(1);
    await moveTo(claim.jobId, 'start-bench', NOW);
    await proveJob(claim.jobId, world, NOW);
    expect((await jobNow(claim.jobId)).stage).toBe('ready');

    const next = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-55120-B' });
    expect((await jobNow(next.jobId)).sheet).toMatchObject({
      version: 2,
      checks: [{}, {}, { label: PULL.label, lesson: claim.number }],
    });
  });

  it('in the place of another, when the owner says so', async () => {
    await rule('workmanship');
    expect(await refusalOf({ replaces: 1, check: { ...PULL, label: 'Charge voltage' } })).toBe('not-allowed');
    await learn({ replaces: 1, check: { ...PULL, label: 'Charge voltage' }, actor: OWNER });
    expect((await sheet(2)).map(({ label, lesson }) => [label, lesson])).toEqual([
      ['Charge voltage', claim.number],
      ['Cable holds when tilted', null],
    ]);
  });
});

describe('nothing is put on the sheet', () => {
  it('before the ruling', async () => {
    expect(await refusalOf()).toBe('conflict');
  });

  it('while the ruling waits for its second look', async () => {
    await rule('workmanship', { alsoFound: 'separate-fault' });
    expect(await refusalOf()).toBe('conflict');
  });

  it('by a claim that is not covered', async () => {
    await rule('damage-after-return', { isAgreed: true });
    expect(await refusalOf()).toBe('conflict');
    expect(await db.checkSheet.count()).toBe(1);
  });

  it('that could not fail', async () => {
    await rule('workmanship');
    expect(await refusalOf({ check: { ...PULL, low: null, high: null } })).toBe('invalid');
    expect(await refusalOf({ check: { ...LOOK, passing: ['filled', 'half filled'] } })).toBe('invalid');
    expect(await db.jobEvent.count({ where: { kind: 'check-taught' } })).toBe(0);
  });

  it('in the place of a check that is not there', async () => {
    await rule('workmanship');
    expect(await refusalOf({ replaces: 9, actor: OWNER })).toBe('invalid');
    expect(await db.checkSheet.count()).toBe(1);
  });

  it('of a sheet that somebody else has changed meanwhile', async () => {
    await rule('workmanship');
    await learn();
    expect(await refusalOf({ check: TILT })).toBe('conflict');
    expect(await db.checkSheet.count()).toBe(2);
  });
});
