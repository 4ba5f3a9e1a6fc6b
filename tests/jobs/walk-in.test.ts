import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { drawReceipt } from '@/lib/documents/receipt';
import { listToGiveBack } from '@/lib/invoices/list-to-give-back';
import { receiptData } from '@/lib/invoices/receipt-data';
import { factsOf } from '@/lib/jobs/facts';
import { newestTokenOf } from '@/lib/jobs/private-link';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { type WalkIn, walkIn } from '@/lib/jobs/walk-in';
import { walkInRepairs } from '@/lib/jobs/walk-in-repairs';
import { drawMail } from '@/lib/mail/draw';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { jobQuoteData } from '@/lib/quotes/quote-data';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { writeOffer } from '@/lib/quotes/write-offer';
import { readWorkshop } from '@/lib/workshop/records';
import { termsId } from '@/lib/workshop/terms-id';
import { useDatabase } from '@/tests/database';
import { textOf } from '@/tests/documents/read-pdf';
import { waitForPart } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, moveTo } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-11-25T10:00:00Z');
let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(NOW);
  await db.workshop.update({ where: { id: 1 }, data: { withdrawalRule: 'uk' } });
}, 60_000);

function parcel(serial: string, formKey: string = randomUUID()): WalkIn {
  return {
    customer: {
      name: 'Perran Veale',
      email: 'perran.veale@example.org',
      phone: '',
      address1: '3 Wherry Steps',
      address2: '',
      postcode: 'QM1 2AB',
      town: 'Sandmouth',
      country: 'GB',
    },
    repairId: world.repairId,
    serial,
    problem: 'A letter says: no sound on the left',
    extra: ['Strap'],
    batteryAnswer: 'healthy',
    photos: [],
    isOtherMatter: false,
    formKey,
    actor: BENCH,
    now: NOW,
  };
}

async function opened(serial: string) {
  const { number } = await walkIn(parcel(serial));
  return (await db.job.findUniqueOrThrow({ where: { number }, select: { id: true } })).id;
}

/** Found out and priced, so that the customer can answer. */
async function asked(jobId: string) {
  await moveTo(jobId, 'assess', NOW);
  await recordFinding({ jobId, text: 'Left output stage open', photos: [], actor: BENCH, now: NOW });
  await writeOffer({
    jobId,
    version: (await jobNow(jobId)).version,
    lines: [
      { kind: 'labour', description: 'Output stage rebuilt', amount: 6000, category: 'S', rateBps: 2000 },
    ],
    reason: 'The left output stage is open.',
    onYes: '',
    onNo: '',
    actor: BENCH,
    now: NOW,
  });
  await moveTo(jobId, 'ask-approval', NOW);
}

const answer = (
  jobId: string,
  o: {
    decision: 'accepted' | 'declined';
    isTermsAccepted?: boolean;
    shownTerms?: string;
    isStartAsked?: boolean;
  },
) => decideOffer({ jobId, revision: 2, actor: { kind: 'customer' }, now: NOW, ...o });

async function mailOf(jobId: string, template: string): Promise<string> {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template } });
  return (await drawMail(mail)).text.replace(/\s+/g, ' ');
}

describe('a parcel without a booking', () => {
  it('opens a job that has arrived, with what came and with the way in for its customer', async () => {
    const jobId = await opened('HW2-70001-A');
    const job = await jobNow(jobId);
    expect(job).toMatchObject({ stage: 'arrived', isSerialSettled: true, promisedOn: null });
    expect(job.accessories).toMatchObject([{ name: 'Strap', isTold: false, isArrived: true }]);
    expect(await newestTokenOf(jobId)).not.toBeNull();
    expect(job.events[0]).toMatchObject({ kind: 'booked', actorKind: BENCH.kind });
  });

  it('tells the customer that nothing is agreed and that a price comes first', async () => {
    const jobId = await opened('HW2-70002-A');
    const text = await mailOf(jobId, 'unit-arrived');
    expect(text).toContain('without a booking');
    expect(text).toContain('No price is agreed yet');
    expect(text).not.toContain('job is free of charge');
    expect(text).toContain('/job/');
  });

  it('agrees to nothing in the customer’s name: no price, no terms, no start', async () => {
    const jobId = await opened('HW2-70003-A');
    const { termsAcceptedAt } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    expect(termsAcceptedAt).toBeNull();
    expect(factsOf(await jobNow(jobId))).toMatchObject({ isPriceAgreed: false, owed: 0 });
    await moveTo(jobId, 'assess', NOW);
    await expect(moveTo(jobId, 'start-bench', NOW)).rejects.toThrow('agreed to no price yet');
    await expect(waitForPart(jobId, NOW)).rejects.toThrow('agreed to no price yet');
  });

  it('pressed twice opens one job', async () => {
    const formKey = randomUUID();
    const first = await walkIn(parcel('HW2-70004-A', formKey));
    expect(await walkIn(parcel('HW2-70004-A', formKey))).toEqual(first);
    expect(await db.job.count({ where: { serialKey: 'HW270004A' } })).toBe(1);
  });

  it('opens a job for another parcel that is entered on the page before', async () => {
    const formKey = randomUUID();
    const first = await walkIn(parcel('HW2-70014-A', formKey));
    const second = await walkIn(parcel('HW2-70015-A', formKey));
    expect(second.number).not.toBe(first.number);
    expect(await db.job.count({ where: { serialKey: 'HW270015A' } })).toBe(1);
  });

  it('is refused where the serial is expected under a booking', async () => {
    await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-70005-A' });
    await expect(walkIn(parcel('hw2 70005 a'))).rejects.toMatchObject({ code: 'conflict', field: 'serial' });
  });

  it('can be opened with every repair that has a check sheet', async () => {
    expect((await walkInRepairs()).map((each) => each.id)).toContain(world.repairId);
  });
});

describe('the first price of such a job', () => {
  it('is asked for as a first one, with nothing agreed before', async () => {
    const jobId = await opened('HW2-71001-B');
    await asked(jobId);
    const text = await mailOf(jobId, 'approval-asked');
    expect(text).not.toContain('Agreed so far');
    expect(text).toContain('No: free of charge');
    // Page and paper: the yes makes the contract, so that work waits for the days to withdraw (Directive 2011/83/EU Art. 7(3)).
    expect((await jobQuoteData(await jobNow(jobId)))?.ifYes).toEqual([
      'We repair it at this price, after the 14 days in which you may withdraw, or at once if you ask us to. You pay when it is done.',
    ]);
  });

  it('needs the terms: a yes without them changes nothing', async () => {
    const jobId = await opened('HW2-71002-B');
    await asked(jobId);
    await expect(answer(jobId, { decision: 'accepted' })).rejects.toMatchObject({ field: 'terms' });
    expect((await jobNow(jobId)).stage).toBe('awaiting-approval');
  });

  it('needs the terms that were linked: where others stand by now, a yes changes nothing', async () => {
    const jobId = await opened('HW2-71012-B');
    await asked(jobId);
    const yes = { decision: 'accepted', isTermsAccepted: true } as const;
    await expect(answer(jobId, { ...yes, shownTerms: termsId('Older terms') })).rejects.toMatchObject({
      code: 'conflict',
      field: 'terms',
      message: 'Our terms have changed since you saw them. Please read them anew. Nothing is agreed to yet.',
    });
    expect(await jobNow(jobId)).toMatchObject({ stage: 'awaiting-approval', termsId: null });
    await answer(jobId, { ...yes, shownTerms: termsId('Terms') });
    expect((await jobNow(jobId)).termsId).toBe(termsId('Terms'));
  });

  it('makes the contract with the yes: terms, days to withdraw, promise after them', async () => {
    const jobId = await opened('HW2-71003-B');
    await asked(jobId);
    await answer(jobId, { decision: 'accepted', isTermsAccepted: true });
    const job = await jobNow(jobId);
    const contract = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      select: { termsAcceptedAt: true, returnFeeMinor: true, policyVersion: { select: { version: true } } },
    });
    expect(contract).toEqual({ termsAcceptedAt: NOW, returnFeeMinor: 960, policyVersion: { version: 1 } });
    expect(job).toMatchObject({ stage: 'on-bench', startRequestedAt: null });
    // Fourteen days from the day after the contract (Directive 2011/83/EU Art. 9(2)(a), Regulation 1182/71 Art. 3).
    expect(job.withdrawUntil?.toISOString()).toContain('2026-12-09');
    expect(job.promisedOn && job.withdrawUntil && job.promisedOn > job.withdrawUntil).toBe(true);
    expect(factsOf(job)).toMatchObject({ isPriceAgreed: true, owed: 6000 });
    const text = await mailOf(jobId, 'approval-recorded');
    expect(text).toContain('Your right to withdraw');
    expect(text).toContain('Work starts after Wednesday 9 December 2026');
  });

  it('starts at once where the customer asked for it', async () => {
    const jobId = await opened('HW2-71004-B');
    await asked(jobId);
    await answer(jobId, { decision: 'accepted', isTermsAccepted: true, isStartAsked: true });
    const job = await jobNow(jobId);
    expect(job.startRequestedAt).toEqual(NOW);
    expect(job.promisedOn && job.withdrawUntil && job.promisedOn < job.withdrawUntil).toBe(true);
  });

  it('costs nothing to decline: no return fee was ever agreed to', async () => {
    const jobId = await opened('HW2-71005-B');
    await asked(jobId);
    await answer(jobId, { decision: 'declined' });
    const job = await jobNow(jobId);
    expect(job.stage).toBe('declined');
    expect(factsOf(job).owed).toBe(0);
    expect(await mailOf(jobId, 'approval-recorded')).toContain('free of charge');
  });
});

it('a first price is reminded of, and lapses, as a price and not as a new one', async () => {
  const jobId = await opened('HW2-71009-B');
  await asked(jobId);
  await lapsePrices(new Date('2026-12-21T10:00:00Z'));
  await lapsePrices(new Date('2026-12-27T10:00:00Z'));
  for (const template of ['offer-reminder', 'offer-lapsed']) {
    expect(await mailOf(jobId, template)).not.toMatch(/new price/i);
  }
});

it('money that comes before any price is agreed counts towards it, and is nothing to give back', async () => {
  const jobId = await opened('HW2-31090-A');
  await recordPayment({
    jobId,
    amount: 2000,
    method: 'cash',
    reference: '',
    receivedOn: day('2026-11-25'),
    actor: BENCH,
    now: NOW,
  });
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'payment-received' } });
  const { text } = await drawMail(mail);
  expect(text).toContain('£20.00 is here and counts towards the price that is still to be agreed.');
  expect(text).not.toContain('back the way it came');
  expect((await listToGiveBack('Europe/London')).map(({ jobNumber }) => jobNumber)).toEqual([]);
  const data = await receiptData(await jobNow(jobId), await readWorkshop());
  expect(data?.price).toBeNull();
  const paper = data ? textOf(await drawReceipt(data)) : '';
  expect(paper).toContain('Paid so far: £20.00');
  expect(paper).toContain('counts towards the price that is still to be agreed');
});
