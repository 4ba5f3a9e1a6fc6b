import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { saveStep } from '@/lib/jobs/draft';
import { erasePerson } from '@/lib/keeping/erase-person';
import { sweepPeople } from '@/lib/keeping/write-sweep';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { turnDown } from '@/lib/quotes/turn-down';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { useDatabase } from '@/tests/database';
import { ADDRESS } from '@/tests/makers/job';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');

const begin = madeOnce(async () => {
  const world = await makeWorkshop(NOW);
  const { quoteId, number } = await makeRequest({ now: NOW });
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
  return { quoteId, number };
});
let quoteId = '';
let number = '';
beforeEach(async () => {
  ({ quoteId, number } = await begin());
}, 60_000);

const accept = () => decideQuote({ quoteId, revision: 1, decision: 'accepted', now: NOW });
const close = async () =>
  turnDown({
    quoteId,
    version: (await quoteNow(quoteId)).version,
    text: 'You asked us to close it.',
    actor: BENCH,
    now: NOW,
  });
const states = async () => {
  const { request, revisions } = await quoteNow(quoteId);
  return [request.state, ...revisions.map(({ state }) => state)];
};

describe('a price that was sent', () => {
  it('ends when it is turned down, and can no longer be answered, reminded of or lapse', async () => {
    await close();
    expect(await states()).toEqual(['turned-down', 'replaced']);
    await expect(accept()).rejects.toMatchObject({ code: 'conflict' });
    expect(await lapsePrices(new Date('2027-02-01T10:00:00Z'))).toEqual({ reminded: 0, lapsed: 0 });
    const mail = await db.mail.findFirstOrThrow({ where: { quoteId, template: 'quote-turned-down' } });
    expect(mail.data).toEqual({ text: 'You asked us to close it.', hadPrice: true });
  });
});

describe('a price that was agreed to and not booked', () => {
  it('is turned down, is not booked from a form that was open, and can then be removed', async () => {
    await accept();
    const token = await startBooking({ quoteId, now: NOW });
    const parcel = { accessories: [], otherAccessory: '', battery: 'healthy', data: 'none' as const };
    await saveStep({ token, step: 'parcel', answers: parcel, now: NOW });
    await saveStep({ token, step: 'address', answers: ADDRESS, now: NOW });
    const erase = { number, isCoverConfirmed: false, actor: OWNER, now: NOW };
    await expect(erasePerson(erase)).rejects.toMatchObject({ code: 'conflict' });

    await close();
    expect(await states()).toEqual(['turned-down', 'replaced']);
    await expect(book({ draftToken: token, shownMinor: 9600, now: NOW })).rejects.toMatchObject({
      code: 'conflict',
      message: 'The price for this booking is not agreed any more.',
    });
    await expect(startBooking({ quoteId, now: NOW })).rejects.toMatchObject({
      message: 'This price is not held any more. Nothing is booked.',
    });
    expect(await db.job.count()).toBe(0);
    expect(await erasePerson(erase)).toMatchObject({ requests: 1 });
  });

  it('stands until it is booked or turned down, however long that takes', async () => {
    await accept();
    expect(await sweepPeople(new Date('2027-06-02T10:00:00Z'))).toBe(0);
    const { request } = await quoteNow(quoteId);
    expect(request).toMatchObject({ state: 'accepted', name: expect.not.stringContaining('removed') });
  });
});

it('a question that was never answered is over once the clock has removed whose it was', async () => {
  const asked = await makeRequest({ now: NOW, answers: { email: 'tom.weir@example.org' } });
  await db.quoteRequest.update({ where: { quoteId: asked.quoteId }, data: { state: 'questioned' } });
  expect(await sweepPeople(new Date('2027-06-02T10:00:00Z'))).toBe(1);
  expect((await quoteNow(asked.quoteId)).request.state).toBe('turned-down');
});
