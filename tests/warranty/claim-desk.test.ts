import { beforeAll, describe, expect, it } from 'vitest';
import { showNumber } from '@/lib/numbers/job-number';
import { countClaims, listClaims } from '@/lib/warranty/claim-desk';
import { findClaim, readClaimCase } from '@/lib/warranty/claim-desk-case';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { inspect } from '@/lib/warranty/inspect';
import { lookAgain, ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import type { Cause } from '@/lib/warranty/rules/causes';
import { readInspection } from '@/lib/warranty/stored-inspection';
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
let first: { number: string; jobId: string };
let repairedClaim: Made;
let secondClaim: Made;
let contested: Made;
let waiting: Made;
let untouched: Made;

async function arriveAndRule(claim: Made, cause: Cause) {
  await takeIn(claim.jobId, NOW);
  await moveTo(claim.jobId, 'assess', NOW);
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
    isLetIn: false,
    reasonText: 'The photo shows what we found on the unit.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
}

beforeAll(async () => {
  const world = await makeWorkshop(SENT);
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
  await lookAgain({
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

describe('the claims desk', () => {
  it('counts each claim where it stands', async () => {
    expect(await countClaims()).toEqual({
      'to-rule': 1,
      'second-look': 1,
      contested: 1,
      ruled: 1,
      closed: 1,
    });
  });

  it.each([
    ['to-rule', () => untouched],
    ['second-look', () => waiting],
    ['contested', () => contested],
    ['ruled', () => secondClaim],
    ['closed', () => repairedClaim],
  ] as const)('lists what stands at %s, and the row says so itself', async (standing, made) => {
    const rows = await listClaims({ standing, page: 1 });
    expect(rows.map((row) => [row.number, row.standing])).toEqual([[made().number, standing]]);
  });

  it('forgets a contested ruling in the list, and shows one that waits', async () => {
    const [again] = await listClaims({ standing: 'contested', page: 1 });
    const [late] = await listClaims({ standing: 'second-look', page: 1 });
    expect(again?.ruled).toBeNull();
    expect(late?.ruled).toEqual({ cause: 'damage-after-return', ruling: 'not-covered', isFinal: false });
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
