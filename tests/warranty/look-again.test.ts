import { beforeEach, expect, test } from 'vitest';
import { readOrderList } from '@/lib/bench/order-records';
import { sayIfNeeded } from '@/lib/bench/say-if-needed';
import { day, dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { waitForParts } from '@/lib/jobs/wait-for-parts';
import { drawMail } from '@/lib/mail/draw';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { writeOffer } from '@/lib/quotes/write-offer';
import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { lookAgain } from '@/lib/warranty/look-again';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { readAnswerClock, rulingDue } from '@/lib/warranty/ruling-due';
import { readWorkshop } from '@/lib/workshop/records';
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
const WHY = 'In its last test of ten hours the fault came back.';

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let number = '';
const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  return { world, number: (await makeCertificate(world, SENT)).number };
});
beforeEach(async () => {
  ({ world, number } = await begin());
}, 60_000);

async function assessed() {
  const claim = await makeClaim({ number, now: NOW });
  await takeIn(claim.jobId, NOW);
  await moveTo(claim.jobId, 'assess', NOW);
  return claim;
}

type Claim = Awaited<ReturnType<typeof makeClaim>>;

const again = async ({ claimId, jobId }: Claim, actor: typeof OWNER | typeof BENCH = OWNER) =>
  lookAgain({ claimId, jobVersion: (await jobNow(jobId)).version, reason: WHY, actor, now: LATER });

const letters = async (jobId: string) => {
  const mails = await db.mail.findMany({
    where: { jobId, template: 'claim-reopened' },
    orderBy: { id: 'asc' },
  });
  return Promise.all(mails.map(async (mail) => (await drawMail(mail)).text));
};

test('a unit without a fault that fails in its last test is ruled anew, repaired, and its certificate renewed', async () => {
  const claim = await assessed();
  const { claimId, jobId } = claim;
  await ruleClaim(claim, { cause: 'no-fault-found', now: NOW });
  await moveTo(jobId, 'return-unrepaired', NOW);
  await expect(again(claim, BENCH)).rejects.toMatchObject({ code: 'not-allowed' });
  const before = await jobNow(jobId);
  await again(claim);

  const job = await jobNow(jobId);
  expect(job).toMatchObject({ stage: 'assessing', readyAt: null });
  expect(job.claim).toMatchObject({ state: 'open', ruling: null, secondLookAt: null, contestedAt: null });
  // It had been ready for two working days of those promised.
  expect(job.promisedOn?.getTime()).toBeGreaterThan(before.promisedOn?.getTime() ?? Number.NaN);
  const [letter = ''] = await letters(jobId);
  expect(letter).toContain(WHY);
  expect(letter).toContain('It no longer stands');
  expect(letter).toContain('After the new ruling you still can, once');
  expect(letter).not.toContain('You need not answer');
  // They were told that it is ready, and when it would be posted.
  expect(letter).toContain('It is not ready to go back any more');
  const promised = job.promisedOn && dayFromDate(job.promisedOn);
  expect(letter).toContain(`We promise it ready by ${promised && formatDay(promised, 'en-GB', 'weekday')}`);
  // The answer is promised anew, from today.
  const workshop = await readWorkshop();
  const row = await db.claim.findUniqueOrThrow({
    where: { id: claimId },
    select: {
      state: true,
      ruling: true,
      contestedAt: true,
      reopenedAt: true,
      job: { select: { arrivedAt: true } },
    },
  });
  const due = rulingDue(row, await readAnswerClock(workshop, LATER), workshop.timeZone);
  expect(due).toEqual({ on: day('2027-02-12'), daysOver: 0 });

  await expect(moveTo(jobId, 'start-bench', LATER)).rejects.toThrow('rule on it first');
  await ruleClaim(claim, { cause: 'workmanship', now: LATER });
  await moveTo(jobId, 'start-bench', LATER);
  await proveJob(jobId, world, LATER);
  expect((await sendBack(jobId, LATER)).certificate).toEqual({ number, revision: 2 });
  await expect(again(claim)).rejects.toThrow('not at a stage');
}, 60_000);

test('the customer’s own contest is not used up, and a price that waited is off', async () => {
  const claim = await assessed();
  const { jobId } = claim;
  await recordFinding({ jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  await ruleClaim(claim, { cause: 'separate-fault', now: NOW });
  const offer = async (amount: number, now: Date) =>
    writeOffer({
      jobId,
      version: (await jobNow(jobId)).version,
      lines: [{ kind: 'labour', description: 'Fader replaced', amount, category: 'S', rateBps: 2000 }],
      reason: 'The fader has worn out.',
      onYes: '',
      onNo: '',
      actor: OWNER,
      now,
    });
  await offer(6000, NOW);
  await moveTo(jobId, 'ask-approval', NOW);
  await again(claim);
  const [letter = ''] = await letters(jobId);
  expect(letter).toContain('You need not answer the price of £60.00 with tax');
  expect(letter).not.toContain('ready to go back');
  const yes = { jobId, revision: 2, decision: 'accepted', actor: { kind: 'customer' }, now: LATER } as const;
  await expect(decideOffer({ ...yes, isTermsAccepted: true })).rejects.toMatchObject({ code: 'conflict' });

  await ruleClaim(claim, { cause: 'damage-after-return', now: LATER });
  expect(factsOf(await jobNow(jobId)).mayContest).toBe(true);
  // Nor does it bind whoever prices what the new ruling leaves to pay.
  expect(await offer(15_000, LATER)).toMatchObject({ gross: 15_000 });
  await contestRuling({ jobId, text: 'It was there before.', now: LATER });
  await ruleClaim(claim, { cause: 'damage-after-return', now: LATER });
  await again(claim);
  const [, second = ''] = await letters(jobId);
  expect(second).toContain(WHY);
  expect(second).not.toContain('you still can, once');
}, 60_000);

test.each([
  ['looked at again', (claim: Claim) => again(claim)],
  ['contested', ({ jobId }: Claim) => contestRuling({ jobId, text: 'The rest is yours too.', now: LATER })],
])(
  'a claim that is %s waits for no part any more, and none is to order for it',
  async (_name, reopen) => {
    const claim = await assessed();
    const { jobId } = claim;
    await ruleClaim(claim, { cause: 'workmanship', alsoFound: 'separate-fault', now: NOW });
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    await waitForParts({
      jobId,
      version: (await jobNow(jobId)).version,
      parts: [{ partId, quantity: 9 }],
      expectedOn: null,
      actor: BENCH,
      now: NOW,
    });
    expect((await readOrderList(LATER)).rows).toMatchObject([{ needed: 9 }]);
    const { version } = await jobNow(jobId);
    await sayIfNeeded({ jobId, version, partId, isNeeded: false, actor: BENCH, now: NOW });
    await reopen(claim);
    expect(await db.awaitedPart.count()).toBe(0);
    expect(await db.partNotNeeded.count()).toBe(0);
    expect((await readOrderList(LATER)).rows).toEqual([]);
  },
  60_000,
);

test('a ruling of covered that is taken back is no return any more', async () => {
  const claim = await assessed();
  const returns = () => db.unitWatch.count({ where: { returnedOn: { not: null } } });
  await ruleClaim(claim, { cause: 'workmanship', now: NOW });
  expect(await returns()).toBe(1);
  await again(claim);
  expect(await returns()).toBe(0);
  expect(await db.$queryRawUnsafe(UNITS_ASTRAY)).toEqual([]);
  expect(await db.$queryRawUnsafe(LINES_ASTRAY)).toEqual([]);
}, 60_000);

test('a ruling is taken back once', async () => {
  const claim = await assessed();
  const { claimId, jobId } = claim;
  await ruleClaim(claim, { cause: 'no-fault-found', now: NOW });
  const jobVersion = (await jobNow(jobId)).version;
  const press = () => lookAgain({ claimId, jobVersion, reason: WHY, actor: OWNER, now: LATER });
  await press();
  await expect(press()).rejects.toMatchObject({ code: 'conflict' });
  expect(await letters(jobId)).toHaveLength(1);
}, 60_000);

test.each([
  ['workmanship', true, /^This rules the claim covered\. The customer is told at once/],
  ['damage-after-return', false, /^The evidence is unclear, or no photo shows it/],
] as const)(
  'a ruling that is told at once is asked about: %s',
  async (cause, isEvidenceClear, question) => {
    const { claimId, jobId } = await assessed();
    const rule = async (mayTell: boolean) =>
      ruleOnClaim({
        claimId,
        jobVersion: (await jobNow(jobId)).version,
        cause,
        alsoFound: null,
        isEvidenceClear,
        isLetIn: null,
        mayTell,
        reasonText: '',
        lesson: '',
        actor: BENCH,
        now: NOW,
      });
    await expect(rule(false)).rejects.toMatchObject({
      code: 'invalid',
      field: 'mayTell',
      message: expect.stringMatching(question),
    });
    expect(await db.mail.count({ where: { jobId, template: 'claim-ruled' } })).toBe(0);
    expect(await rule(true)).toEqual({ ruling: 'covered', isFinal: true });
    expect(await db.mail.count({ where: { jobId, template: 'claim-ruled' } })).toBe(1);
  },
  60_000,
);
