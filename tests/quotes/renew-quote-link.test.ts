import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { findQuoteByToken, newestQuoteTokenOf } from '@/lib/jobs/private-link';
import { renewQuoteLink } from '@/lib/quotes/renew-quote-link';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeRequest, quoteNow } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');
const LATER = new Date('2026-12-02T10:00:00Z');

beforeEach(async () => {
  await resetDatabase();
  await makeWorkshop(NOW);
}, 60_000);

describe('renewing the private link of a quote', () => {
  it('shuts the old address, opens a new one and mails it', async () => {
    const { quoteId, token } = await makeRequest({ now: NOW });
    const { version } = await quoteNow(quoteId);
    await renewQuoteLink({ quoteId, version, actor: BENCH, now: LATER });

    expect(await findQuoteByToken(token)).toBeNull();
    const renewed = await newestQuoteTokenOf(quoteId);
    expect(renewed).not.toBe(token);
    expect(await findQuoteByToken(renewed ?? '')).toMatchObject({ quoteId });
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('asked');
    expect(quote.events.map(({ kind }) => kind)).toContain('link-renewed');
    const mails = await db.mail.findMany({ where: { quoteId, template: 'link-renewed' } });
    expect(mails).toMatchObject([{ toAddress: 'ines.farrow@example.org' }]);
  });

  it('keeps the old address for whoever saw an earlier state of the quote', async () => {
    const { quoteId, token } = await makeRequest({ now: NOW });
    const { version } = await quoteNow(quoteId);
    const call = { quoteId, version: version - 1, actor: BENCH, now: LATER };
    await expect(renewQuoteLink(call)).rejects.toMatchObject({ code: 'conflict' });
    expect(await findQuoteByToken(token)).toMatchObject({ quoteId });
  });

  it('makes no new way in for somebody whose data was removed', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await db.quoteRequest.update({ where: { quoteId }, data: { email: '' } });
    const { version } = await quoteNow(quoteId);
    const call = { quoteId, version, actor: BENCH, now: LATER };
    await expect(renewQuoteLink(call)).rejects.toMatchObject({ code: 'conflict' });
  });
});
