import { beforeEach, describe, expect, it } from 'vitest';
import { usePartOnJob } from '@/lib/bench/use-part-on-job';
import { day, dayFromDate } from '@/lib/calendar/day';
import { holidayCalendar } from '@/lib/calendar/holidays';
import { workingDaysBetween } from '@/lib/calendar/working';
import { db } from '@/lib/db/client';
import { factsOf } from '@/lib/jobs/facts';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { COVERED_TOGETHER, type QuoteLine, shownLines, splitCovered } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { writeOffer } from '@/lib/quotes/write-offer';
import { contestRuling } from '@/lib/warranty/contest-ruling';
import { isGenuine } from '@/lib/warranty/genuine';
import { inspect } from '@/lib/warranty/inspect';
import { lookAgain } from '@/lib/warranty/look-again';
import { readChain } from '@/lib/warranty/records';
import { ruleOnClaim } from '@/lib/warranty/rule-on-claim';
import { takeSecondLook } from '@/lib/warranty/take-second-look';
import { useDatabase } from '@/tests/database';
import {
  jobNow,
  makeCertificate,
  makeClaim,
  moveTo,
  proveJob,
  ruleClaim,
  sendBack,
  somePhoto,
  takeIn,
} from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const SENT = new Date('2026-12-03T16:00:00Z');
const OPENED = new Date('2027-02-01T09:00:00Z');
const NOW = new Date('2027-02-08T10:00:00Z');
const BACK = new Date('2027-02-11T15:00:00Z');

const FADER: QuoteLine = {
  kind: 'labour',
  description: 'Fader replaced',
  amount: 2400,
  category: 'S',
  rateBps: 2000,
};

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let certificate = '';
let claim: { claimId: string; jobId: string };

const begin = madeOnce(async () => {
  const world = await makeWorkshop(SENT);
  const certificate = (await makeCertificate(world, SENT)).number;
  const claim = await makeClaim({ number: certificate, now: OPENED });
  await takeIn(claim.jobId, NOW);
  await moveTo(claim.jobId, 'assess', NOW);
  await recordFinding({ jobId: claim.jobId, text: 'A fader scratches.', photos: [], actor: BENCH, now: NOW });
  return { world, certificate, claim };
});
beforeEach(async () => {
  ({ world, certificate, claim } = await begin());
}, 120_000);

const version = async () => (await jobNow(claim.jobId)).version;

/** Our joint cracked; with `alsoFound` something else is broken as well, which the owner confirms. */
async function rule(o: { alsoFound: 'separate-fault' | null; cause?: 'damage-after-return' }) {
  const { claimId } = claim;
  const photo = somePhoto();
  await inspect({ claimId, item: 'outside-damage', answer: 'no', note: '', photo, actor: BENCH, now: NOW });
  await ruleOnClaim({
    claimId,
    jobVersion: await version(),
    cause: o.cause ?? 'workmanship',
    alsoFound: o.alsoFound,
    isEvidenceClear: true,
    mayTell: true,
    isLetIn: false,
    reasonText: 'A joint of ours cracked, and a fader has worn out beside it.',
    lesson: '',
    actor: BENCH,
    now: NOW,
  });
  if (o.alsoFound === null && !o.cause) return;
  await takeSecondLook({ claimId, jobVersion: await version(), isConfirmed: true, actor: OWNER, now: NOW });
}

async function offer(lines: readonly QuoteLine[] = [FADER]) {
  const written = await writeOffer({
    jobId: claim.jobId,
    version: await version(),
    lines,
    reason: 'The fader has worn out. It has nothing to do with the socket.',
    onYes: '',
    onNo: '',
    actor: OWNER,
    now: NOW,
  });
  await moveTo(claim.jobId, 'ask-approval', NOW);
  return written;
}

const answer = (decision: 'accepted' | 'declined', revision = 2) =>
  decideOffer({
    jobId: claim.jobId,
    revision,
    decision,
    actor: { kind: 'customer' },
    now: NOW,
  });

async function finish(o: { paid: number }) {
  await proveJob(claim.jobId, world, NOW);
  if (o.paid > 0)
    await recordPayment({
      jobId: claim.jobId,
      amount: o.paid,
      method: 'card',
      reference: '',
      receivedOn: day('2027-02-08'),
      actor: BENCH,
      now: NOW,
    });
  return sendBack(claim.jobId, BACK);
}

async function linesOfChain() {
  const chain = await readChain(certificate);
  if (!chain) throw new Error('no chain');
  const lines = chain.inForce.lines.map((line) => ({
    key: line.key,
    description: line.description,
    symptoms: line.symptoms,
    startsOn: dayFromDate(line.startsOn),
    endsOn: dayFromDate(line.endsOn),
  }));
  return { chain, lines };
}

async function newestMail(template: string) {
  const mail = await db.mail.findFirstOrThrow({
    where: { jobId: claim.jobId, template },
    orderBy: { id: 'desc' },
  });
  return { data: mail.data, text: (await drawMail(mail)).text };
}

describe('the price for the rest of a partly covered claim', () => {
  it('holds the covered part for nothing, and what would be paid beside it', async () => {
    await rule({ alsoFound: 'separate-fault' });
    expect(await offer()).toEqual({ revision: 2, gross: 2400 });
    const job = await jobNow(claim.jobId);
    const [booked, offered] = job.quotes[0]?.revisions ?? [];
    expect([booked?.grossMinor, offered?.grossMinor]).toEqual([0, 2400]);
    const lines = offered?.lines.map(readLine) ?? [];
    expect(splitCovered(lines)).toEqual({ covered: booked?.lines.map(readLine), paid: [FADER] });
    expect(shownLines(lines)[2]).toEqual({ description: COVERED_TOGETHER, amount: 0 });
    // Nothing is owed before the customer says yes.
    expect(factsOf(job).owed).toBe(0);
  });

  it('is told with what a no leads to, and that the covered part is free', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    const { data, text } = await newestMail('approval-asked');
    expect(data).toMatchObject({ previousGross: 0, gross: 2400, returnFee: null });
    expect(text).toContain('What your certificate covers is free of charge (£0.00), whatever you answer.');
    expect(text).toContain('If you say no, we repair the covered part and leave the rest as it is.');
    expect(text).toContain('Yes: £24.00 with tax. No: free of charge (£0.00).');
  });

  it.each([
    ['before the ruling', null],
    ['while the ruling waits for its second look', 'waiting'],
  ])('is not written %s', async (_name, how) => {
    if (how === 'waiting') {
      await rule({ alsoFound: 'separate-fault' });
      await db.claim.update({ where: { id: claim.claimId }, data: { state: 'open', secondLookAt: null } });
    }
    const written = await attempt(() => offer());
    expect(written.ok ? '' : written.refusal.message).toContain('no final ruling yet');
    expect(await db.quoteRevision.count({ where: { quote: { jobId: claim.jobId } } })).toBe(1);
  });

  it('needs something to pay', async () => {
    await rule({ alsoFound: 'separate-fault' });
    const written = await attempt(() => offer([]));
    expect(written.ok ? '' : written.refusal.code).toBe('invalid');
  });
});

describe('a yes to the rest', () => {
  it('repairs both parts, asks for the rest alone, and adds it to the certificate', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    expect(await answer('accepted')).toBe('accepted');
    const job = await jobNow(claim.jobId);
    expect([job.stage, factsOf(job).owed]).toEqual(['on-bench', 2400]);
    expect((await newestMail('approval-recorded')).text).toContain(
      'What your certificate covers is free of charge (£0.00).',
    );

    const unpaid = await attempt(() => finish({ paid: 0 }));
    expect(unpaid.ok ? '' : unpaid.refusal.message).toContain('something to pay');
    await recordPayment({
      jobId: claim.jobId,
      amount: 2400,
      method: 'card',
      reference: '',
      receivedOn: day('2027-02-08'),
      actor: BENCH,
      now: NOW,
    });
    expect((await sendBack(claim.jobId, BACK)).certificate).toEqual({ number: certificate, revision: 2 });
    // 24.00 with tax is 20.00 before it: 25 of the 45 minutes at 48.00 an hour.
    expect(await db.claim.findUnique({ where: { id: claim.claimId } })).toMatchObject({
      costMinutes: 20,
      costPartsMinor: 0,
      costPostageMinor: 420,
    });

    const { chain, lines } = await linesOfChain();
    expect(lines).toEqual([
      {
        key: 'work-1',
        description: 'USB-C socket replaced',
        symptoms: ['Does not charge', 'Cable falls out'],
        // Counted from the first return; 1 to 18 February 2027, with five working days of post, are 17 days out of the
        // customer's hands.
        startsOn: '2026-12-03',
        endsOn: '2027-12-20',
      },
      {
        key: 'work-2',
        description: 'Fader replaced',
        symptoms: ['Has failed again: Fader replaced'],
        // The days before it was done are not given back to it, nor those of its own repair: P12M from this return, and the
        // seven days of post, which are out of the customer's hands.
        startsOn: '2027-02-11',
        endsOn: '2028-02-18',
      },
    ]);
    expect(await isGenuine(chain.inForce)).toBe(true);
    expect(chain.revisions.map((revision) => revision.supersededAt === null)).toEqual([false, true]);
  }, 60_000);

  it('opens a claim on the new line later, at no charge', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    await answer('accepted');
    await finish({ paid: 2400 });
    const again = await makeClaim({
      number: certificate,
      symptom: 'Has failed again: Fader replaced',
      // The covered socket's line has ended by then, the fader's has not.
      now: new Date('2028-01-20T09:00:00Z'),
    });
    const stored = await db.claim.findUniqueOrThrow({ where: { id: again.claimId } });
    expect(stored.preliminary).toMatchObject({
      answer: 'covered-subject-to-inspection',
      reasons: [{ code: 'serial-same' }, { code: 'line-covers', description: 'Fader replaced' }],
    });
    expect((await jobNow(again.jobId)).quotes[0]?.revisions[0]?.grossMinor).toBe(0);
  }, 60_000);

  it('keeps a line that had ended as it was, when a later claim is covered', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    await answer('accepted');
    await finish({ paid: 2400 });
    const late = new Date('2028-02-10T09:00:00Z');
    claim = await makeClaim({ number: certificate, symptom: 'other', now: late });
    await takeIn(claim.jobId, late);
    await moveTo(claim.jobId, 'assess', late);
    await ruleClaim(claim, { cause: 'workmanship', now: late });
    await moveTo(claim.jobId, 'start-bench', late);
    await proveJob(claim.jobId, world, late);
    await sendBack(claim.jobId, late);
    const { chain, lines } = await linesOfChain();
    expect(chain.inForce.revision).toBe(3);
    expect(lines.map(({ key, endsOn }) => [key, endsOn])).toEqual([
      ['work-1', '2027-12-20'],
      // Back by Thursday 17 February 2028 with five working days of post: ninety days end on 17 May.
      ['work-2', '2028-05-17'],
    ]);
  }, 60_000);

  it('stands when the customer contests and the ruling stays partly covered', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    await answer('accepted');
    await proveJob(claim.jobId, world, NOW);
    await contestRuling({ jobId: claim.jobId, text: 'The fader is yours too.', now: NOW });
    await rule({ alsoFound: 'separate-fault' });
    const job = await jobNow(claim.jobId);
    expect(job.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['replaced', 'accepted']);
    expect(factsOf(job).owed).toBe(2400);
    const { data, text } = await newestMail('claim-ruled');
    expect(data).toMatchObject({ agreedGross: 2400, mayContest: false });
    expect(text).toContain('£24.00 with tax, as you agreed');
  });

  it('stands when a second price is declined', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    await answer('accepted');
    expect(await offer([FADER, { ...FADER, description: 'Knob replaced', amount: 600 }])).toEqual({
      revision: 3,
      gross: 3000,
    });
    expect(await answer('declined', 3)).toBe('rest-declined');
    const job = await jobNow(claim.jobId);
    expect([job.stage, factsOf(job).owed]).toEqual(['on-bench', 2400]);
    const { data, text } = await newestMail('approval-recorded');
    expect(data).toMatchObject({ decision: 'rest-declined', gross: 2400 });
    expect(text).toContain('£24.00 with tax stays agreed');
  });
});

describe('a no to the rest', () => {
  it('still repairs the covered part, for nothing, and renews its cover alone', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    expect(await answer('declined')).toBe('rest-declined');
    const job = await jobNow(claim.jobId);
    expect([job.stage, factsOf(job).owed]).toEqual(['on-bench', 0]);
    expect(job.quotes[0]?.revisions.map(({ state }) => state)).toEqual(['accepted', 'declined']);
    const { data, text } = await newestMail('approval-recorded');
    expect(data).toMatchObject({ decision: 'rest-declined', gross: 0 });
    expect(text).toContain('We repair the covered part');
    expect(text).toContain('free of charge (£0.00)');
    expect(text).not.toMatch(/unrepaired|return fee/);

    expect((await finish({ paid: 0 })).certificate).toEqual({ number: certificate, revision: 2 });
    const { lines } = await linesOfChain();
    expect(lines.map(({ key, endsOn }) => [key, endsOn])).toEqual([['work-1', '2027-12-20']]);
    expect((await newestMail('unit-ready')).text).toContain('Nothing is left to pay (£0.00).');
  }, 60_000);

  it.each(['looked at again', 'contested'])(
    'is not followed by a ruling that covers less than was repaired: %s',
    async (how) => {
      await rule({ alsoFound: 'separate-fault' });
      await offer();
      await answer('declined');
      await proveJob(claim.jobId, world, NOW);
      const { claimId, jobId } = claim;
      if (how === 'contested') await contestRuling({ jobId, text: 'The fader is yours too.', now: NOW });
      else
        await lookAgain({
          claimId,
          jobVersion: await version(),
          reason: 'We look anew.',
          actor: OWNER,
          now: NOW,
        });
      await expect(rule({ alsoFound: null, cause: 'damage-after-return' })).rejects.toMatchObject({
        code: 'invalid',
        field: 'cause',
        message: expect.stringContaining('repaired already'),
      });
      // One that was made before it was refused, and waits for its second look.
      await db.claim.update({
        where: { id: claimId },
        data: { cause: 'damage-after-return', ruling: 'not-covered' },
      });
      const look = async (isConfirmed: boolean) =>
        takeSecondLook({ claimId, jobVersion: await version(), isConfirmed, actor: OWNER, now: NOW });
      await expect(look(true)).rejects.toThrow('repaired already');
      await look(false);
      await rule({ alsoFound: 'separate-fault' });
      expect((await jobNow(jobId)).claim).toMatchObject({ state: 'ruled', ruling: 'partly' });
    },
  );

  it('said twice is one no', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    await answer('declined');
    expect(await answer('declined')).toBe('rest-declined');
    expect(await db.mail.count({ where: { jobId: claim.jobId, template: 'approval-recorded' } })).toBe(1);
  });

  it('repairs a claim that is covered as a whole, too', async () => {
    await rule({ alsoFound: null });
    await moveTo(claim.jobId, 'start-bench', NOW);
    await offer();
    expect(await answer('declined')).toBe('rest-declined');
    expect((await jobNow(claim.jobId)).stage).toBe('on-bench');
  });

  it('moves the promise by the days it took, as a contest instead of an answer does', async () => {
    await rule({ alsoFound: 'separate-fault' });
    await offer();
    const promised = (await jobNow(claim.jobId)).promisedOn;
    if (!promised) throw new Error('nothing was promised');
    // Monday 8 to Thursday 11 February 2027: three working days.
    await contestRuling({ jobId: claim.jobId, text: 'The fader is yours too.', now: BACK });
    const job = await jobNow(claim.jobId);
    const calendar = holidayCalendar({ country: 'GB', region: 'ENG', years: [2027] });
    expect(job.stage).toBe('assessing');
    expect(
      job.promisedOn && workingDaysBetween(dayFromDate(promised), dayFromDate(job.promisedOn), calendar),
    ).toBe(3);
  });

  it('on a claim that covers nothing sends the unit back as it came, for nothing', async () => {
    await rule({ alsoFound: null, cause: 'damage-after-return' });
    expect(await offer()).toEqual({ revision: 2, gross: 2400 });
    expect((await newestMail('approval-asked')).data).toMatchObject({ returnFee: 0 });
    expect(await answer('declined')).toBe('declined');
    const job = await jobNow(claim.jobId);
    expect([job.stage, factsOf(job).owed]).toEqual(['declined', 0]);
  });
});

describe('a yes on a claim that covers nothing', () => {
  it('gives a certificate of its own for what was paid for, and none for the repair before', async () => {
    await rule({ alsoFound: null, cause: 'damage-after-return' });
    await offer();
    await decideOffer({
      jobId: claim.jobId,
      revision: 2,
      decision: 'accepted',
      isTermsAccepted: true,
      actor: { kind: 'customer' },
      now: NOW,
    });
    const sent = await finish({ paid: 2400 });
    const own = await readChain(sent.certificate?.number ?? '');
    expect(own?.inForce.lines.map(({ key, description, symptoms }) => [key, description, symptoms])).toEqual([
      ['work-1', 'Fader replaced', ['Has failed again: Fader replaced']],
    ]);
    // 45 minutes, of which 20.00 before tax paid for 25.
    expect(await db.claim.findUnique({ where: { id: claim.claimId } })).toMatchObject({
      costMinutes: 20,
      costPartsMinor: 0,
    });
  }, 60_000);
});

describe('a part fitted under a covered claim', () => {
  it('that was not in the unit before gets a line of its own, with its lot', async () => {
    const second = await db.lot.create({
      data: {
        partId: (await db.part.findFirstOrThrow()).id,
        code: 'L-2701',
        supplier: 'Harbour Components',
        receivedOn: NOW,
        received: 5,
        inStock: 5,
        unitCostMinor: 180,
      },
    });
    await rule({ alsoFound: null });
    await moveTo(claim.jobId, 'start-bench', NOW);
    await usePartOnJob({
      jobId: claim.jobId,
      version: await version(),
      lotId: second.id,
      quantity: 1,
      actor: BENCH,
      now: NOW,
    });
    await finish({ paid: 0 });
    const { chain } = await linesOfChain();
    expect(chain.inForce.lines.map(({ key, lotId }) => [key, lotId])).toEqual([
      ['work-1', null],
      ['part-2', second.id],
    ]);
  }, 60_000);
});
