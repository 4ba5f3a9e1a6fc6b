import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { acceptAfterNo } from '@/lib/quotes/accept-after-no';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { agreedRevision } from '@/lib/quotes/records';
import { resetDatabase, useDatabase } from '@/tests/database';
import { bookAtQuote, makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { jobNow } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

/** Held to the end of Thursday 31 December 2026. */
const NOW = new Date('2026-12-01T10:00:00Z');
const LATER = new Date('2026-12-02T10:00:00Z');
const LAST_MOMENT = new Date('2026-12-31T23:59:59Z');
const DAY_AFTER = new Date('2027-01-01T00:00:00Z');

useDatabase();

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let quoteId = '';
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
  quoteId = (await makeRequest({ now: NOW })).quoteId;
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
}, 60_000);

const sayNo = (now = LATER) => decideQuote({ quoteId, revision: 1, decision: 'declined', now });
const sayYes = (now = LATER, revision = 1) => acceptAfterNo({ quoteId, revision, now });
const mailOfNo = async () =>
  (await drawMail(await db.mail.findFirstOrThrow({ where: { quoteId, template: 'quote-declined' } }))).text;

describe('a no to a quote', () => {
  it('becomes a yes to the same price, which the booking goes on with', async () => {
    await sayNo();
    await sayYes();
    await sayYes();
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('accepted');
    expect(quote.revisions.map(({ state, grossMinor }) => [state, grossMinor])).toEqual([
      ['declined', 9600],
      ['accepted', 9600],
    ]);
    const [declined, agreed] = [quote.revisions[0], agreedRevision(quote)];
    expect(declined?.agreedText).toMatch(/^No to quote/);
    expect(agreed?.agreedText).toMatch(/^Yes, after the no to revision 1, to quote .+, revision 2: /);
    expect(agreed).toMatchObject({
      decidedAt: LATER,
      validUntil: declined?.validUntil,
      issuedAt: declined?.issuedAt,
      policyVersionId: declined?.policyVersionId,
      returnFeeMinor: declined?.returnFeeMinor,
      workingDays: declined?.workingDays,
    });
    expect(await db.mail.count({ where: { quoteId, template: 'quote-accepted' } })).toBe(1);
    const { jobId } = await bookAtQuote({ quoteId, now: LATER });
    expect((await jobNow(jobId)).stage).toBe('booked');
  });

  it('does so to the end of the last day, and not after it', async () => {
    await sayNo();
    await expect(sayYes(DAY_AFTER)).rejects.toMatchObject({ code: 'conflict' });
    await sayYes(LAST_MOMENT);
  });

  it('is told of it in its mail, with the day', async () => {
    await sayNo();
    expect(await mailOfNo()).toContain('until the end of Thursday 31 December 2026');
  });

  it('says nothing of it where the price is held no more', async () => {
    await sayNo(DAY_AFTER);
    expect(await mailOfNo()).not.toContain('still say yes');
  });

  it('cannot be taken back before it is given, nor to another price', async () => {
    await expect(sayYes()).rejects.toMatchObject({ code: 'conflict' });
    await sayNo();
    await expect(sayYes(LATER, 2)).rejects.toMatchObject({ code: 'conflict' });
  });

  it('leaves the customer a way to write, and the workshop one to send another price, not a higher one unasked', async () => {
    await sayNo();
    await answerQuestion({ quoteId, text: 'Could you do it without the knobs?', photos: [], now: LATER });
    const again = { quoteId, repairId: world.repairId, now: LATER };
    await expect(makeQuote({ ...again, amount: 9700 })).rejects.toMatchObject({ field: 'customerAsked' });
    await makeQuote({ ...again, amount: 9000 });
    expect((await quoteNow(quoteId)).request.state).toBe('quoted');
    await expect(sayYes()).rejects.toMatchObject({ code: 'conflict' });
    await decideQuote({ quoteId, revision: 2, decision: 'accepted', now: LATER });
    expect(agreedRevision(await quoteNow(quoteId))?.revision).toBe(2);
  });
});
