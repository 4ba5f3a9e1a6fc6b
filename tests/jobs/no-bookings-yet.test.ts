import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { startDraft } from '@/lib/jobs/draft';
import { walkIn } from '@/lib/jobs/walk-in';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { dispatch } from '@/lib/warranty/dispatch';
import { useDatabase } from '@/tests/database';
import { readyJob, sendBack } from '@/tests/makers/course';
import { filledDraft } from '@/tests/makers/job';
import { makeQuote, makeRequest } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T10:00:00Z');

useDatabase();
const world = madeOnce(() => makeWorkshop(NOW));
let made: Awaited<ReturnType<typeof world>>;
beforeEach(async () => {
  made = await world();
}, 60_000);

const forget = (data: { town?: string; addressLines?: string[]; territory?: string }) =>
  db.workshop.update({ where: { id: 1 }, data });
const NO_BOOKINGS = 'This workshop takes no bookings yet.';

describe('a workshop without an address', () => {
  it('begins no booking, and takes none that was begun before', async () => {
    const draftToken = await filledDraft({ repairId: made.repairId, now: NOW });
    await forget({ addressLines: [] });
    await expect(startDraft({ repairId: made.repairId, now: NOW })).rejects.toThrow(NO_BOOKINGS);
    await expect(book({ draftToken, shownMinor: 7200, now: NOW })).rejects.toThrow(NO_BOOKINGS);
    expect(await db.job.count()).toBe(0);
    await forget({ addressLines: ['4 Slip Lane'] });
    expect(await book({ draftToken, shownMinor: 7200, now: NOW })).toMatchObject({ isNew: true });
  });

  it('takes no yes to a price and books none; a no is taken', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: made.repairId, now: NOW });
    const answer = (decision: 'accepted' | 'declined') =>
      decideQuote({ quoteId, revision: 1, decision, now: NOW });
    await forget({ town: '' });
    await expect(answer('accepted')).rejects.toThrow(NO_BOOKINGS);
    await forget({ town: 'Sandmouth' });
    await answer('accepted');
    await forget({ town: '' });
    await expect(startBooking({ quoteId, now: NOW })).rejects.toThrow(NO_BOOKINGS);
    const other = await makeRequest({ now: NOW, answers: { serial: 'HW2-20202-K' } });
    await makeQuote({ quoteId: other.quoteId, repairId: made.repairId, now: NOW });
    await decideQuote({
      quoteId: other.quoteId,
      revision: 1,
      decision: 'declined',
      now: NOW,
    });
    expect(await db.quoteRequest.findMany({ select: { state: true }, orderBy: { state: 'asc' } })).toEqual([
      { state: 'accepted' },
      { state: 'declined' },
    ]);
  });

  it('opens no job for a parcel that came, and says to staff what is missing', async () => {
    await forget({ town: '', addressLines: [] });
    const parcel = {
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
      repairId: made.repairId,
      serial: 'HW2-10999-K',
      problem: 'No sound on the left',
      extra: [],
      batteryAnswer: 'healthy',
      photos: [],
      isOtherMatter: false,
      formKey: randomUUID(),
      actor: BENCH,
      now: NOW,
    };
    await expect(walkIn(parcel)).rejects.toThrow('the address for parcels and the town');
    expect(await db.customer.count()).toBe(0);
  });
});

it('a workshop that has not said where certificates hold books, and sends nothing back before it has', async () => {
  await forget({ territory: '' });
  const jobId = await readyJob(made, NOW);
  await expect(sendBack(jobId, NOW)).rejects.toThrow('where certificates hold good');
  await forget({ territory: 'the United Kingdom' });
  const { version } = await db.job.findUniqueOrThrow({ where: { id: jobId }, select: { version: true } });
  const sent = await dispatch({
    jobId,
    version,
    handover: { by: 'carrier', carrier: 'Harbour Post', carrierReference: 'HP-1001' },
    postage: 0,
    actor: BENCH,
    now: NOW,
  });
  expect(sent.certificate).not.toBeNull();
});
