import { beforeEach, expect, test } from 'vitest';
import { recordCheck } from '@/lib/bench/record-check';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordWork } from '@/lib/jobs/record-work';
import { withdraw } from '@/lib/jobs/withdraw';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { lookAgain } from '@/lib/warranty/look-again';
import { useDatabase } from '@/tests/database';
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
const NOW = new Date('2027-02-08T10:00:00Z');
const LATER = new Date('2027-02-10T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let number = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  return { world, number: (await makeCertificate(world, SENT)).number };
});
beforeEach(async () => {
  ({ world, number } = await begin());
}, 60_000);

type Claim = { claimId: string; jobId: string };

/** Asks for 60.00 for a fader; gives the revision of the price. */
async function askForFader(jobId: string, now: Date) {
  const { revision } = await writeOffer({
    jobId,
    version: (await jobNow(jobId)).version,
    lines: [{ kind: 'labour', description: 'Fader replaced', amount: 6000, category: 'S', rateBps: 2000 }],
    reason: 'The fader has worn out.',
    onYes: '',
    onNo: '',
    actor: OWNER,
    now,
  });
  await moveTo(jobId, 'ask-approval', now);
  return revision;
}

/** A unit taken in, ruled a separate fault, and repaired for 60.00 if its customer says yes, which they do. */
async function agreeToPay(claim: Claim, now: Date) {
  const { jobId } = claim;
  await takeIn(jobId, now);
  await moveTo(jobId, 'assess', now);
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now });
  await ruleClaim(claim, { cause: 'separate-fault', now });
  const revision = await askForFader(jobId, now);
  const yes = { jobId, revision, decision: 'accepted', actor: { kind: 'customer' }, now } as const;
  // Nothing was agreed to before: a claim stands on its certificate.
  expect((await jobNow(jobId)).termsAcceptedAt).toBeNull();
  await expect(decideOffer(yes)).rejects.toMatchObject({ field: 'terms' });
  await decideOffer({ ...yes, isTermsAccepted: true });
  expect((await jobNow(jobId)).termsAcceptedAt).toEqual(now);
}

test('whoever wins a contest after agreeing to pay owes nothing, and the second repair is proved anew', async () => {
  const claim = await makeClaim({ number, now: NOW });
  const { jobId } = claim;
  await agreeToPay(claim, NOW);
  await proveJob(jobId, world, NOW);
  expect(factsOf(await jobNow(jobId)).owed).toBe(6000);

  await contestRuling({ jobId, text: 'The fader was never touched.', now: LATER });
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  const won = await jobNow(jobId);
  expect(won.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['accepted', 'replaced']);
  expect(factsOf(won)).toMatchObject({ owed: 0, workEntries: 0, checksMissing: 2, checksFailed: 0 });
  const papers = await db.invoice.findMany({ orderBy: { sequence: 'asc' } });
  expect(
    papers.filter((paper) => paper.jobId === jobId).map(({ kind, payableMinor }) => [kind, payableMinor]),
  ).toEqual([
    ['invoice', 6000],
    ['credit-note', 6000],
  ]);

  await moveTo(jobId, 'start-bench', LATER);
  await expect(moveTo(jobId, 'prove', LATER)).rejects.toMatchObject({ code: 'invalid' });
  await recordWork({ jobId, text: 'Joint made again', minutes: 20, actor: BENCH, now: LATER });
  await moveTo(jobId, 'prove', LATER);
  const check = { jobId, note: '', actor: BENCH, now: LATER };
  await recordCheck({ ...check, checkId: world.voltage, given: { reading: 5.02 } });
  await expect(moveTo(jobId, 'pass-checks', LATER)).rejects.toMatchObject({ code: 'invalid' });
  await recordCheck({ ...check, checkId: world.tilt, given: { tick: true } });
  await moveTo(jobId, 'pass-checks', LATER);
  expect(factsOf(await jobNow(jobId)).owed).toBe(0);
  expect((await sendBack(jobId, LATER)).certificate).toEqual({ number, revision: 2 });
}, 60_000);

test('whoever agrees to a paid repair on a claim that covers nothing may withdraw, and owes nothing for it', async () => {
  await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'eu' } });
  const claim = await makeClaim({ number, now: LATER });
  const { jobId } = claim;
  await agreeToPay(claim, LATER);
  const agreed = await jobNow(jobId);
  expect(agreed.withdrawUntil).not.toBeNull();
  expect(factsOf(agreed)).toMatchObject({ isStartAllowed: false, owed: 6000 });
  await withdraw({ jobId, shownOwed: 0, now: LATER });
  const after = await jobNow(jobId);
  expect([after.stage, factsOf(after).owed]).toEqual(['declined', 0]);
  await moveTo(jobId, 'pack-unrepaired', LATER);
  await sendBack(jobId, LATER);
}, 60_000);

test('a yes to a paid repair after a withdrawal makes a contract of its own', async () => {
  await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'eu' } });
  const claim = await makeClaim({ number, now: LATER });
  const { claimId, jobId } = claim;
  await agreeToPay(claim, LATER);
  await withdraw({ jobId, shownOwed: 0, now: LATER });
  const { version } = await jobNow(jobId);
  await lookAgain({ claimId, jobVersion: version, reason: 'We look anew.', actor: OWNER, now: LATER });
  await ruleClaim(claim, { cause: 'separate-fault', now: LATER });
  const revision = await askForFader(jobId, LATER);
  expect(factsOf(await jobNow(jobId)).isContractMade).toBe(false);

  const yes = { jobId, revision, decision: 'accepted', actor: { kind: 'customer' } } as const;
  await expect(decideOffer({ ...yes, now: LATER })).rejects.toMatchObject({ field: 'terms' });
  await decideOffer({ ...yes, isTermsAccepted: true, now: LATER });
  const today = day('2027-02-10');
  expect(factsOf(await jobNow(jobId), today)).toMatchObject({
    isContractMade: true,
    hasAgreedPaidOffer: true,
    isStartAllowed: false,
    mayWithdraw: true,
    owed: 6000,
  });
  await withdraw({ jobId, shownOwed: 0, now: LATER });
  const after = await jobNow(jobId);
  expect([after.stage, factsOf(after).owed]).toEqual(['declined', 0]);
  expect(after.events.filter(({ kind }) => kind === 'withdrawn')).toHaveLength(2);
}, 60_000);

test.each([
  ['separate-fault', 'declined', 'replaced'],
  ['workmanship', 'assessing', 'accepted'],
] as const)(
  'whoever contests and then withdraws is answered all the same: %s',
  async (cause, stage, first) => {
    await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'eu' } });
    const claim = await makeClaim({ number, now: LATER });
    const { jobId } = claim;
    await agreeToPay(claim, LATER);
    await contestRuling({ jobId, text: 'The fader was never touched.', now: LATER });
    // The price stands, but nothing is begun before the answer.
    await expect(moveTo(jobId, 'start-bench', LATER)).rejects.toThrow('rule on it first');
    await withdraw({ jobId, shownOwed: 0, now: LATER });
    expect((await jobNow(jobId)).stage).toBe('declined');
    await expect(moveTo(jobId, 'pack-unrepaired', LATER)).rejects.toThrow('rule on it first');

    await ruleClaim(claim, { cause, now: LATER });
    const ruled = await jobNow(jobId);
    expect([ruled.stage, ruled.quotes[0]?.revisions[0]?.state]).toEqual([stage, first]);
    expect(factsOf(ruled)).toMatchObject({ owed: 0, isStartAllowed: true, mayContest: false });
    if (stage === 'assessing') return moveTo(jobId, 'start-bench', LATER);
    await moveTo(jobId, 'pack-unrepaired', LATER);
    expect(await sendBack(jobId, LATER)).toEqual({ certificate: null });
  },
  60_000,
);

test('a credit note says why: no fault found is no cover', async () => {
  const claim = await makeClaim({ number, now: LATER });
  const { jobId } = claim;
  await agreeToPay(claim, LATER);
  await transaction((tx) => issueForJob(tx, { jobId, actor: BENCH, now: LATER }));
  await contestRuling({ jobId, text: 'It works at home.', now: LATER });
  await ruleClaim(claim, { cause: 'no-fault-found', now: LATER });
  const credit = await db.invoice.findFirstOrThrow({ where: { jobId, kind: 'credit-note' } });
  expect(credit.reason).toContain('no fault found');
  expect(credit.reason).not.toContain('covered after all');
}, 60_000);
