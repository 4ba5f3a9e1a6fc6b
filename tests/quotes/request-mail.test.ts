import { beforeEach, describe, expect, it } from 'vitest';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { drawMail } from '@/lib/mail/draw';
import { showNumber } from '@/lib/numbers/job-number';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
}, 60_000);

const drawn = async (template: string) => drawMail(await db.mail.findFirstOrThrow({ where: { template } }));

describe('mails about a quote that has no job', () => {
  it('name it, its device and its customer, and lead to its private page or to the desk', async () => {
    const { quoteId, number, token } = await makeRequest({ now: NOW });
    const link = `${config.appUrl}/quote/${token}`;
    const desk = `${config.appUrl}/workshop/quotes/${number}`;
    const { version } = await quoteNow(quoteId);
    await askCustomer({ quoteId, version, text: 'Does it charge at all?', actor: BENCH, now: NOW });
    await answerQuestion({ quoteId, text: 'Only lying flat.', photos: [], now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    await decideQuote({ quoteId, revision: 1, decision: 'accepted', now: NOW });

    for (const template of ['quote-asked', 'quote-question', 'quote-sent', 'quote-accepted']) {
      const { subject, text, html } = await drawn(template);
      expect(subject).toContain(showNumber(number));
      expect(text).toContain('Hello Ines Farrow,');
      expect(text).toContain(link);
      expect(html).toContain('Tideline HW-2');
      expect(text).not.toContain('/workshop/');
    }
    const toWorkshop = await drawn('quote-answered');
    expect(toWorkshop.text).toContain('Only lying flat.');
    expect(toWorkshop.text).toContain(desk);
    expect(toWorkshop.text).not.toContain(token);

    const price = await drawn('quote-sent');
    // 30 calendar days after 1 December 2026, that day not counted (Regulation 1182/71 Art. 3).
    expect(price.text).toContain('Thursday 31 December 2026');
    expect(price.text).toContain('£96.00 with tax');
    expect(price.text).toContain('7 working days');
  });

  it('are kept without an address, a name or a token', async () => {
    const { token } = await makeRequest({ now: NOW });
    const mail = await db.mail.findFirstOrThrow();
    expect(JSON.stringify(mail.data)).not.toMatch(/Ines|example\.org/);
    expect(JSON.stringify(mail.data)).not.toContain(token);
  });

  it('about nothing at all have nothing to say', async () => {
    await expect(drawMail({ template: 'quote-asked', data: {}, jobId: null })).rejects.toThrow();
  });
});
