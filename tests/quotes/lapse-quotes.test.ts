import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { attempt } from '@/lib/outcome';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { lapsePrices } from '@/lib/quotes/write-lapses';
import { resetDatabase, useDatabase } from '@/tests/database';
import { PAD } from '@/tests/makers/offer';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';

/** Held for 30 calendar days from 1 December 2026: to the end of 31 December. */
const NOW = new Date('2026-12-01T10:00:00Z');
const REMINDED = new Date('2026-12-26T09:00:00Z');
const LAST_MOMENT = new Date('2026-12-31T23:59:59Z');
const DAY_AFTER = new Date('2027-01-01T00:00:00Z');

useDatabase();

let quoteId = '';
let repairId = '';
beforeEach(async () => {
  await resetDatabase();
  repairId = (await makeWorkshop(NOW)).repairId;
  quoteId = (await makeRequest({ now: NOW })).quoteId;
  await makeQuote({ quoteId, repairId, now: NOW, validDays: 30 });
}, 60_000);

const decide = (decision: 'accepted' | 'declined', now: Date) =>
  attempt(() => decideQuote({ quoteId, revision: 1, decision, now }));
const mails = (template: string) => db.mail.count({ where: { template, quoteId } });

describe('a price that was asked for and is not answered', () => {
  it('is reminded of once, keeps through its last day, and lapses after it', async () => {
    expect(await lapsePrices(REMINDED)).toEqual({ reminded: 1, lapsed: 0 });
    expect(await lapsePrices(LAST_MOMENT)).toEqual({ reminded: 0, lapsed: 0 });
    expect(await lapsePrices(DAY_AFTER)).toEqual({ reminded: 0, lapsed: 1 });
    expect(await lapsePrices(DAY_AFTER)).toEqual({ reminded: 0, lapsed: 0 });
    const quote = await quoteNow(quoteId);
    expect([quote.request.state, quote.revisions[0]?.state]).toEqual(['lapsed', 'lapsed']);
    expect(quote.events.filter(({ actorKind }) => actorKind === 'clock').map(({ kind }) => kind)).toEqual([
      'reminded',
      'lapsed',
    ]);
    expect([await mails('quote-reminder'), await mails('quote-lapsed')]).toEqual([1, 1]);
  });

  it('names the inspection where it was a price of one', async () => {
    const { quoteId: asked } = await makeRequest({ now: NOW, answers: { device: 'Marram Two', serial: '' } });
    const fee = { ...PAD, kind: 'inspection-fee', description: 'Inspection', amount: 1800 } as const;
    await makeQuote({ quoteId: asked, repairId, now: NOW, lines: [fee] });
    await lapsePrices(DAY_AFTER);
    const mail = await db.mail.findFirstOrThrow({ where: { template: 'quote-lapsed', quoteId: asked } });
    const { text } = await drawMail(mail);
    expect(text).toContain('Our price for the inspection of Marram Two');
    expect(text).toContain('If you still want the inspection');
  });

  it('does not lapse once it was agreed to', async () => {
    expect((await decide('accepted', LAST_MOMENT)).ok).toBe(true);
    expect(await lapsePrices(DAY_AFTER)).toEqual({ reminded: 0, lapsed: 0 });
    expect((await quoteNow(quoteId)).request.state).toBe('accepted');
  });

  it('cannot be agreed to once it has lapsed', async () => {
    await lapsePrices(DAY_AFTER);
    const late = await decide('accepted', DAY_AFTER);
    expect(late.ok ? 'agreed' : late.refusal.code).toBe('conflict');
    expect((await quoteNow(quoteId)).request.state).toBe('lapsed');
  });
});
