import { beforeAll, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { showNumber } from '@/lib/numbers/job-number';
import { countClaims, listClaims } from '@/lib/warranty/claim-desk';
import { findClaim, readClaimCase } from '@/lib/warranty/claim-desk-case';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { inspect } from '@/lib/warranty/inspect';
import { lookAgain } from '@/lib/warranty/look-again';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import type { Cause } from '@/lib/warranty/rules/causes';
import type { ClaimStanding } from '@/lib/warranty/rules/claim-standing';
import { readInspection } from '@/lib/warranty/stored-inspection';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');

type Made = Awaited<ReturnType<typeof makeClaim>>;
let world: Awaited<ReturnType<typeof makeWorkshop>>;
let first: { number: string; jobId: string };
let repairedClaim: Made;
let secondClaim: Made;
let contested: Made;
let waiting: Made;
let untouched: Made;

async function arriveAndRule(claim: Made, cause: Cause, where: 'on the way' | 'here' = 'on the way') {
  if (where === 'on the way') {
    await takeIn(claim.jobId, NOW);
    await moveTo(claim.jobId, 'assess', NOW);
  }
  const { claimId } = claim;
  await inspect({
    claimId,
    item: 'outside-damage',
    answer: 'yes',
    note: '',
    photo: somePhoto(),
    actor: BENCH,
    now: NOW,
  });
  await ruleOnClaim({
    claimId,
    jobVersion: (await jobNow(claim.jobId)).version,
    cause,
    alsoFound: null,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'The photo shows what we found on the unit.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
}

beforeAll(async () => {
  world = await makeWorkshop(SENT);
  first = await makeCertificate(world, SENT, 'FR2-70001-A');
  repairedClaim = await makeClaim({ number: first.number, serial: 'FR2-70001-A', now: NOW });
  await arriveAndRule(repairedClaim, 'workmanship');
  await moveTo(repairedClaim.jobId, 'start-bench', NOW);
  await proveJob(repairedClaim.jobId, world, NOW);
  await sendBack(repairedClaim.jobId, NOW);
  secondClaim = await makeClaim({ number: first.number, serial: 'FR2-70001-A', now: NOW });
  await arriveAndRule(secondClaim, 'workmanship');

  const other = await makeCertificate(world, SENT, 'FR2-70002-B');
  contested = await makeClaim({ number: other.number, serial: 'FR2-70002-B', now: NOW });
  await arriveAndRule(contested, 'separate-fault');
  const { version } = await jobNow(contested.jobId);
  await takeSecondLook({
    claimId: contested.claimId,
    jobVersion: version,
    isConfirmed: true,
    actor: OWNER,
    now: NOW,
  });
  await contestRuling({ jobId: contested.jobId, text: 'I see it another way.', now: NOW });

  const third = await makeCertificate(world, SENT, 'FR2-70003-C');
  waiting = await makeClaim({ number: third.number, serial: 'FR2-70003-C', now: NOW });
  await arriveAndRule(waiting, 'damage-after-return');
  const fourth = await makeCertificate(world, SENT, 'FR2-70004-D');
  untouched = await makeClaim({ number: fourth.number, serial: 'FR2-70004-D', now: NOW });
}, 120_000);

const PAGE = {
  page: 1,
  clock: { today: day('2027-02-15'), answerDays: 2, calendar: { weekend: [6, 7], closed: new Map() } },
  timeZone: 'Europe/London',
};

describe('the claims desk', () => {
  it('counts each claim where it stands', async () => {
    expect(await countClaims()).toEqual({
      'to-rule': 0,
      'second-look': 1,
      contested: 1,
      'not-here': 1,
      ruled: 1,
      closed: 1,
    });
  });

  it.each([
    ['not-here', () => untouched],
    ['second-look', () => waiting],
    ['contested', () => contested],
    ['ruled', () => secondClaim],
    ['closed', () => repairedClaim],
  ] as const)('lists what stands at %s, and the row says so itself', async (standing, made) => {
    const rows = await listClaims({ standing, ...PAGE });
    expect(rows.map((row) => [row.number, row.standing])).toEqual([[made().number, standing]]);
  });

  it('forgets a contested ruling in the list, and shows one that waits', async () => {
    const [again] = await listClaims({ standing: 'contested', ...PAGE });
    const [late] = await listClaims({ standing: 'second-look', ...PAGE });
    expect(again?.ruled).toBeNull();
    expect(late?.ruled).toEqual({ cause: 'damage-after-return', ruling: 'not-covered', isFinal: false });
  });
});

describe('until when a ruling is promised', () => {
  const rows = async (standing: ClaimStanding) =>
    (await listClaims({ standing, ...PAGE })).map((row) => [row.number, row.answer]);

  it('is counted from the arrival or the contest, until the customer has been told', async () => {
    // Come, and contested, on Monday 8 February: due on Wednesday the 10th, and on Monday the 15th 3 working days over.
    const due = { on: '2027-02-10', daysOver: 3 };
    expect(await rows('second-look')).toEqual([[waiting.number, due]]);
    expect(await rows('contested')).toEqual([[contested.number, due]]);
    expect(await rows('ruled')).toEqual([[secondClaim.number, null]]);
    expect(await rows('not-here')).toEqual([[untouched.number, null]]);
  });

  it('puts what came first before what was opened first, and what is not here apart', async () => {
    const made: Made[] = [];
    for (const serial of ['FR2-70005-E', 'FR2-70006-F']) {
      const { number } = await makeCertificate(world, SENT, serial);
      made.push(await makeClaim({ number, serial, now: NOW }));
    }
    const [opened, later] = made;
    if (!opened || !later) throw new Error('two claims are made');
    await takeIn(later.jobId, new Date('2027-02-09T10:00:00Z'));
    await takeIn(opened.jobId, new Date('2027-02-10T10:00:00Z'));
    expect(await rows('to-rule')).toEqual([
      [later.number, { on: '2027-02-11', daysOver: 2 }],
      [opened.number, { on: '2027-02-12', daysOver: 1 }],
    ]);
    expect(await rows('not-here')).toEqual([[untouched.number, null]]);
  });
});

describe('a claim whose contest was answered', () => {
  it('is to be ruled on once the owner takes that answer back, and contested no more', async () => {
    const { number, claimId, jobId } = contested;
    const counts = await countClaims();
    await arriveAndRule(contested, 'workmanship', 'here');
    await lookAgain({
      claimId,
      jobVersion: (await jobNow(jobId)).version,
      reason: 'The joint is not the one we made.',
      actor: OWNER,
      now: new Date('2027-02-09T10:00:00Z'),
    });
    const rows = await listClaims({ standing: 'to-rule', ...PAGE });
    expect(rows.find((row) => row.number === number)?.standing).toBe('to-rule');
    expect(await countClaims()).toEqual({ ...counts, contested: 0, 'to-rule': counts['to-rule'] + 1 });
  });
});

describe('one claim', () => {
  it('is found in any spelling of its number, and not by a job number', async () => {
    const spelt = showNumber(untouched.number).toLowerCase();
    expect((await findClaim(spelt))?.id).toBe(untouched.claimId);
    const job = await jobNow(untouched.jobId);
    expect(await findClaim(job.number)).toBeNull();
    expect(await readClaimCase('C0000000', null)).toBeNull();
  });

  it('is compared with the last repair of its certificate, and with an earlier one when asked', async () => {
    const last = await readClaimCase(secondClaim.number, null);
    const firstJob = await jobNow(first.jobId);
    expect(last?.repairs).toEqual([
      { jobNumber: firstJob.number, revision: 1, claimNumber: null },
      {
        jobNumber: (await jobNow(repairedClaim.jobId)).number,
        revision: 2,
        claimNumber: repairedClaim.number,
      },
    ]);
    expect(last?.repair.id).toBe(repairedClaim.jobId);
    // Whose it was first, beside whoever claims on it now.
    const { name, email } = firstJob.customer;
    expect(last?.first).toEqual({ jobNumber: firstJob.number, customer: { name, email } });
    const asked = await readClaimCase(secondClaim.number, firstJob.number);
    expect(asked?.repair.id).toBe(first.jobId);
  });

  it('knows nothing of repairs made after it was opened', async () => {
    const found = await readClaimCase(repairedClaim.number, null);
    expect(found?.certificate.revision).toBe(1);
    expect(found?.repairs).toHaveLength(1);
  });

  it('has its inspection read back with whether there is a photo', async () => {
    const found = await readClaimCase(waiting.number, null);
    expect(found?.claim.inspection.map(readInspection)).toEqual([
      { item: 'outside-damage', answer: 'yes', hasPhoto: true },
    ]);
  });
});
