import { beforeEach, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { clockRound } from '@/lib/jobs/clock-round';
import { saveStep } from '@/lib/jobs/draft';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { findJobByToken } from '@/lib/jobs/private-link';
import { sendMessage } from '@/lib/jobs/send-message';
import { erasePerson } from '@/lib/keeping/erase-person';
import { noteSeen } from '@/lib/keeping/seen';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { turnDown } from '@/lib/quotes/turn-down';
import { resetDatabase, useDatabase } from '@/tests/database';
import { ADDRESS, filledDraft, makeBooking } from '@/tests/makers/job';
import { askPrice } from '@/tests/makers/offer';
import { makeRequest, quoteNow } from '@/tests/makers/quote';
import { jobNow, makeCertificate, makeClaim, moveTo, takeIn } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const CUSTOMER = { kind: 'customer' } as const;

useDatabase();
beforeEach(resetDatabase);

/** What only this person said, or what leads to them, each as it was typed. */
const WORDS = [
  ADDRESS.name,
  ADDRESS.email,
  ADDRESS.phone,
  ADDRESS.address1,
  ADDRESS.postcode,
  'HP-IN-77',
  'HP-2201',
  'Blue case of my aunt',
  'It stood in the rain',
  'My neighbour found another',
  'Tape deck from the attic',
  'It hums since the move',
  'I bought it at the fair',
  'My sister says go ahead',
];

/** Every row of every table as text, whatever columns it has; invoices keep the buyer by law. */
async function everyTable(): Promise<string> {
  const tables = await db.$queryRaw<{ name: string }[]>`
    select format('%I.%I', schemaname, tablename) as name from pg_tables
    where schemaname in ('public', 'pgboss') and tablename not like 'invoice%'`;
  const texts: string[] = [];
  for (const { name } of tables) {
    const rows = await db.$queryRawUnsafe<{ row: string }[]>(
      `select to_jsonb(t)::text as row from ${name} t`,
    );
    texts.push(...rows.map(({ row }) => row));
  }
  return texts.join('\n');
}

/** A booking with an accessory of the customer's own words, whose parcel they named. */
async function bookedInOwnWords(repairId: string): Promise<string> {
  const draftToken = await filledDraft({ repairId, now: NOW });
  await saveStep({
    token: draftToken,
    step: 'parcel',
    answers: {
      accessories: ['Power supply'],
      otherAccessory: 'Blue case of my aunt',
      battery: 'healthy',
      data: 'saved',
    },
    now: NOW,
  });
  const { token } = await book({ draftToken, shownMinor: 7200, now: NOW });
  const jobId = (await findJobByToken(token))?.jobId ?? '';
  await nameParcel({ jobId, reference: 'HP-IN-77', now: NOW });
  return jobId;
}

it('nothing of a person is left in any table but their invoices', async () => {
  const world = await makeWorkshop(NOW);
  await db.carrier.create({
    data: {
      name: 'Harbour Post',
      divisor: 5000,
      maxGrams: 20_000,
      longestSideMm: 1200,
      maxValueMinor: 0,
      tracking: 'https://harbour-post.example.org/{reference}',
    },
  });
  // Taken in without what they sent along, so that the letter names it, and sent back with a page to follow it on.
  const { number, jobId } = await makeCertificate(world, NOW);
  const waiting = await bookedInOwnWords(world.repairId);
  await takeIn(waiting, NOW);
  await sendMessage({ jobId, text: 'It stood in the rain.', actor: CUSTOMER, now: NOW });
  const claim = await makeClaim({ number, now: new Date('2027-01-04T09:00:00Z') });
  await moveTo(claim.jobId, 'cancel', new Date('2027-01-05T09:00:00Z'));
  const cancelled = await makeBooking({ repairId: world.repairId, now: NOW });
  await moveJob({
    jobId: cancelled.jobId,
    version: (await jobNow(cancelled.jobId)).version,
    move: 'cancel',
    note: 'My neighbour found another',
    actor: CUSTOMER,
    now: NOW,
  });
  const { quoteId } = await makeRequest({
    now: NOW,
    answers: {
      name: ADDRESS.name,
      email: ADDRESS.email,
      device: 'Tape deck from the attic',
      problem: 'It hums since the move',
    },
  });
  const version = async () => (await quoteNow(quoteId)).version;
  const call = { quoteId, actor: BENCH, now: NOW };
  await askCustomer({ ...call, version: await version(), text: 'Where is it from?' });
  await answerQuestion({ quoteId, text: 'I bought it at the fair', photos: [], now: NOW });
  await turnDown({ ...call, version: await version(), text: 'No parts.' });
  await noteSeen({ userId: BENCH.id, what: 'opened', email: ADDRESS.email, jobId, now: NOW });
  await moveTo(waiting, 'assess', NOW);
  const revision = await askPrice(waiting, NOW);
  await decideOffer({
    jobId: waiting,
    revision,
    decision: 'accepted',
    actor: OWNER,
    told: { how: 'telephone', on: day('2026-11-25'), words: 'My sister says go ahead' },
    version: (await jobNow(waiting)).version,
    now: NOW,
  });
  await db.job.update({ where: { id: waiting }, data: { stage: 'closed' } });
  await clockRound(new Date('2027-02-01T09:00:00Z'));
  await db.mail.updateMany({
    data: { state: 'sent', sentAt: NOW, lastError: `550 ${ADDRESS.email} is full` },
  });

  const before = await everyTable();
  for (const each of WORDS) expect(before, each).toContain(each);
  const history = await db.jobEvent.count();
  const shown = await jobNow(jobId);
  const erased = await erasePerson({
    number: shown.number,
    isCoverConfirmed: true,
    actor: OWNER,
    now: new Date('2027-02-02T09:00:00Z'),
  });
  expect(erased).toMatchObject({ bookings: 4, requests: 1 });

  const after = await everyTable();
  for (const each of WORDS) expect(after, each).not.toContain(each);
  // What came along is still counted, and what the catalogue calls it stays.
  const names = await db.accessory.findMany({ where: { jobId: waiting }, orderBy: { name: 'asc' } });
  expect(names.map((each) => each.name)).toEqual(['Power supply', 'Something else 1']);
  expect(await db.jobEvent.count()).toBe(history + 4);
  expect(JSON.stringify(await db.invoice.findMany())).toContain(ADDRESS.name);
}, 60_000);

it('lets nothing else of a history be changed, and no row of it go', async () => {
  const world = await makeWorkshop(NOW);
  const jobId = await bookedInOwnWords(world.repairId);
  const named = await db.jobEvent.findFirstOrThrow({ where: { jobId, kind: 'parcel-named' } });
  const where = { id: named.id };
  await expect(db.jobEvent.update({ where, data: { data: { reference: 'HP-1' } } })).rejects.toThrow();
  await expect(db.jobEvent.update({ where, data: { data: {} } })).rejects.toThrow();
  await expect(
    db.jobEvent.update({ where, data: { data: { reference: '' }, kind: 'booked' } }),
  ).rejects.toThrow();
  await expect(db.jobEvent.delete({ where })).rejects.toThrow();
  await db.jobEvent.update({ where, data: { data: { reference: '' } } });
});
