import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { readDraft, saveStep } from '@/lib/jobs/draft';
import { hashToken } from '@/lib/jobs/private-link';
import { attempt } from '@/lib/outcome';
import { acceptAfterNo } from '@/lib/quotes/accept-after-no';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { resetDatabase, useDatabase } from '@/tests/database';
import { ADDRESS } from '@/tests/makers/job';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
}, 60_000);

async function quoted(): Promise<string> {
  const { quoteId } = await makeRequest({ now: NOW });
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
  return quoteId;
}

const press = (quoteId: string, decision: 'accepted' | 'declined') =>
  attempt(() => decideQuote({ quoteId, revision: 1, decision, now: NOW }));

const sayYesAfterAll = (quoteId: string) => attempt(() => acceptAfterNo({ quoteId, revision: 1, now: NOW }));

describe('requests, whoever races', () => {
  it('eight of one customer about one unit at once are one quote', async () => {
    const asked = await Promise.all(Array.from({ length: 8 }, () => makeRequest({ now: NOW })));
    expect(new Set(asked.map(({ number }) => number)).size).toBe(1);
    expect(asked.filter(({ isNew }) => isNew)).toHaveLength(1);
    expect(await db.message.count()).toBe(7);
  });

  it('one form sent four times at once is one request without additions', async () => {
    const formKey = randomUUID();
    await Promise.all(Array.from({ length: 4 }, () => makeRequest({ now: NOW, formKey })));
    expect([await db.quote.count(), await db.message.count(), await db.mail.count()]).toEqual([1, 0, 1]);
  });
});

describe('the answer to a price, whoever races', () => {
  it('a yes pressed four times at once is one yes', async () => {
    const quoteId = await quoted();
    const outcomes = await Promise.all(Array.from({ length: 4 }, () => press(quoteId, 'accepted')));
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    const quote = await quoteNow(quoteId);
    expect(quote.events.filter(({ kind }) => kind === 'decided')).toHaveLength(1);
    expect(await db.mail.count({ where: { template: 'quote-accepted' } })).toBe(1);
  });

  it('of yes and no at once one holds, and the other is told', async () => {
    const quoteId = await quoted();
    const outcomes = await Promise.all([press(quoteId, 'accepted'), press(quoteId, 'declined')]);
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    const quote = await quoteNow(quoteId);
    const [revision] = quote.revisions;
    expect(revision?.agreedText).toMatch(
      quote.request.state === 'accepted' ? /^Yes to quote/ : /^No to quote/,
    );
    expect(revision?.state).toBe(quote.request.state);
  });

  it('a no taken back four times at once is one yes', async () => {
    const quoteId = await quoted();
    await press(quoteId, 'declined');
    const outcomes = await Promise.all(Array.from({ length: 4 }, () => sayYesAfterAll(quoteId)));
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('accepted');
    expect(quote.revisions.map(({ state }) => state)).toEqual(['declined', 'accepted']);
    expect(quote.events.filter(({ kind }) => kind === 'decided')).toHaveLength(2);
    expect(await db.mail.count({ where: { template: 'quote-accepted' } })).toBe(1);
  });

  it('of a no taken back and a new price at once one holds, and the other is told', async () => {
    const quoteId = await quoted();
    await press(quoteId, 'declined');
    const [yes, sent] = await Promise.all([
      sayYesAfterAll(quoteId),
      attempt(() => makeQuote({ quoteId, repairId: world.repairId, now: NOW, amount: 9000 })),
    ]);
    expect([yes.ok, sent.ok].filter(Boolean)).toHaveLength(1);
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe(yes.ok ? 'accepted' : 'quoted');
    expect(quote.revisions.map(({ state }) => state)).toEqual(['declined', yes.ok ? 'accepted' : 'sent']);
  });

  it('of a yes and a new revision at once, the yes holds or is told of the new price', async () => {
    const quoteId = await quoted();
    const [yes, revised] = await Promise.all([
      press(quoteId, 'accepted'),
      attempt(() => makeQuote({ quoteId, repairId: world.repairId, now: NOW, amount: 9000 })),
    ]);
    expect([yes.ok, revised.ok].filter(Boolean)).toHaveLength(1);
    const quote = await quoteNow(quoteId);
    expect(quote.revisions.map(({ state }) => state)).toEqual(yes.ok ? ['accepted'] : ['replaced', 'sent']);
    expect(quote.request.state).toBe(yes.ok ? 'accepted' : 'quoted');
  });
});

describe('the booking of a price, whoever races', () => {
  it('begun four times at once is one draft', async () => {
    const quoteId = await quoted();
    await press(quoteId, 'accepted');
    const tokens = await Promise.all(Array.from({ length: 4 }, () => startBooking({ quoteId, now: NOW })));
    expect(new Set(tokens).size).toBe(1);
    expect(await db.bookingDraft.count()).toBe(1);
  });

  it('sent from four drafts at once is one job', async () => {
    const quoteId = await quoted();
    await press(quoteId, 'accepted');
    const first = await startBooking({ quoteId, now: NOW });
    const parcel = { accessories: [], otherAccessory: '', battery: 'healthy', data: 'none' as const };
    await saveStep({ token: first, step: 'parcel', answers: parcel, now: NOW });
    const answers = await saveStep({ token: first, step: 'address', answers: ADDRESS, now: NOW });
    const { repairId } = (await readDraft(first)) ?? { repairId: '' };
    const others = ['b', 'c', 'd'];
    await db.bookingDraft.createMany({
      data: others.map((token) => ({
        tokenHash: hashToken(token),
        repairId,
        quoteId,
        answers,
        createdAt: NOW,
        updatedAt: NOW,
      })),
    });
    const outcomes = await Promise.all(
      [first, ...others].map((draftToken) => attempt(() => book({ draftToken, shownMinor: 9600, now: NOW }))),
    );
    expect(outcomes.filter(({ ok }) => ok)).toHaveLength(1);
    expect(outcomes.flatMap((outcome) => (outcome.ok ? [] : [outcome.refusal.code]))).toEqual([
      'conflict',
      'conflict',
      'conflict',
    ]);
    expect([await db.job.count(), await db.customer.count()]).toEqual([1, 1]);
  });
});
