import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { listJobs } from '@/lib/jobs/list-jobs';
import { placeOf } from '@/lib/jobs/list-jobs-sought';
import { sendMessage } from '@/lib/jobs/send-message';
import { readToday } from '@/lib/jobs/today';
import { showNumber } from '@/lib/numbers/job-number';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim, moveTo, proveJob, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-11-20T10:00:00Z');
const NOW = new Date('2026-11-26T09:00:00Z');

let booked: { number: string; jobId: string };
let claim: { number: string; jobId: string };
let certificate: { number: string; jobId: string };
let unpaid: { number: string; jobId: string };

beforeAll(async () => {
  const world = await makeWorkshop(SENT);
  certificate = await makeCertificate(world, SENT, 'HW2-77001-A');
  booked = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-20991-C' });
  claim = await makeClaim({ number: certificate.number, serial: 'HW2-77001-A', now: NOW });
  await takeIn(claim.jobId, NOW);
  unpaid = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-31555-D' });
  await takeIn(unpaid.jobId, NOW);
  await moveTo(unpaid.jobId, 'assess', NOW);
  await moveTo(unpaid.jobId, 'start-bench', NOW);
  await proveJob(unpaid.jobId, world, NOW);
  const { customerId } = await db.job.findUniqueOrThrow({ where: { id: booked.jobId } });
  await db.customer.update({
    where: { id: customerId },
    data: {
      name: 'Tom Sør-Li',
      email: 'tom_li@example.net',
      phone: '+44 20 7946 0123',
      postcode: 'QX9 4ZZ',
      town: 'Tern Haven',
    },
  });
  const references = { inboundReference: 'RA 1234 0001 5 GB', carrierReference: 'out-77/19' };
  await db.job.update({ where: { id: booked.jobId }, data: references });
}, 60_000);

const numbersFor = async (q: string) => {
  const page = await listJobs({ stage: null, q, page: 1 });
  return page.jobs.map((job) => job.number);
};

describe('the list of jobs', () => {
  it.each([
    ['its number', () => showNumber(booked.number).toLowerCase()],
    ['a part of its number', () => booked.number.slice(2, 7)],
    ['its serial without hyphens', () => 'hw2 20991'],
    ['a name in any case', () => 'tom sør'],
    ['an e-mail address', () => 'tom_li@example.net'],
    ['a telephone number spelt another way', () => '(020) 7946-0123'],
    ['the last six digits of one', () => '460123'],
    ['a town', () => 'tern h'],
    ['a postcode without its space', () => 'qx94zz'],
    ['the half of a postcode', () => 'QX9 4'],
    ['the reference of the parcel here', () => 'ra12340001-5gb'],
    ['a part of the one of the parcel back', () => 'OUT 77'],
  ])('finds a job by %s', async (_name, q) => {
    expect(await numbersFor(q())).toEqual([booked.number]);
  });

  it('takes a percent sign and an underscore for what they are', async () => {
    expect(await numbersFor('mar%holt')).toEqual([]);
    expect(await numbersFor('maren_holt')).toEqual([]);
  });

  it('finds nothing by what only stands across two columns, or inside a telephone number', async () => {
    for (const q of ['example.net tern', 'haven qx9', '4207946', '94zz44']) {
      expect(await numbersFor(q)).toEqual([]);
    }
  });

  it('counts what is found by stage and lists one stage', async () => {
    const all = await listJobs({ stage: null, q: '', page: 1 });
    expect(all.total).toBe(4);
    expect(all.counts.get('booked')).toBe(1);
    const ready = await listJobs({ stage: 'ready', q: '', page: 1 });
    expect(ready.jobs.map((job) => job.number)).toEqual([unpaid.number]);
    expect(ready.counts).toEqual(all.counts);
  });

  it.each(['', 'Tom Sør'])('is the last page past its last: “%s”', async (q) => {
    const first = await listJobs({ stage: null, q, page: 1 });
    expect(first.jobs.length).toBeGreaterThan(0);
    expect(await listJobs({ stage: null, q, page: 99 })).toEqual(first);
    expect(await listJobs({ stage: 'on-bench', q, page: 99 })).toMatchObject({ jobs: [], page: 1 });
  });
});

describe('the search box', () => {
  it('leads a number to its own page', async () => {
    const issuing = await jobNow(certificate.jobId);
    const quote = await db.quote.findFirstOrThrow({ where: { jobId: booked.jobId } });
    expect(await placeOf(showNumber(booked.number))).toEqual({ place: 'job', number: booked.number });
    expect(await placeOf(claim.number)).toEqual({ place: 'claim', number: claim.number });
    expect(await placeOf(certificate.number)).toEqual({ place: 'job', number: issuing.number });
    expect(await placeOf(quote.number)).toEqual({ place: 'job', number: booked.number });
  });

  it.each(['HW2-20991-C', 'tom', '', 'J0000000'])('leads %j to the list', async (typed) => {
    expect(await placeOf(typed)).toEqual({ place: 'list' });
  });
});

describe('today, read from the records', () => {
  it('lists the unpaid unit, the claim that has arrived, the parcel to come and who wrote last', async () => {
    await sendMessage({
      jobId: certificate.jobId,
      text: 'When?',
      actor: { kind: 'customer' },
      now: NOW,
    });
    await sendMessage({ jobId: unpaid.jobId, text: 'How?', actor: { kind: 'customer' }, now: NOW });
    const later = new Date(NOW.getTime() + 60_000);
    await sendMessage({ jobId: unpaid.jobId, text: 'By transfer.', actor: BENCH, now: later });

    const { lists, expected, unanswered, today, load } = await readToday(NOW);
    expect(today).toBe('2026-11-26');
    expect(lists.onCustomer).toMatchObject([
      { job: { number: unpaid.number, owed: 7200 }, wait: { step: 'pay' } },
    ]);
    expect(lists.claims).toMatchObject([
      { job: { kind: 'claim', claim: { standing: 'to-rule' } }, wait: { step: 'rule-claim' } },
    ]);
    expect(expected.map((each) => each.number)).toEqual([booked.number]);
    expect(unanswered.map((each) => each.number)).toEqual([(await jobNow(certificate.jobId)).number]);
    // The claim's 60 planned minutes are promised for 3 December, five working days on.
    expect(load.days[5]).toEqual({ day: '2026-12-03', minutes: 60 });
  });
});
