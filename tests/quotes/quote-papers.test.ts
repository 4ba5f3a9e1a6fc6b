import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { drawQuote } from '@/lib/documents/quote';
import { drawRepairForm } from '@/lib/documents/repair-form';
import { factsOf } from '@/lib/jobs/facts';
import { placeOf } from '@/lib/jobs/list-jobs-sought';
import { findQuoteByToken } from '@/lib/jobs/private-link';
import { readJob } from '@/lib/jobs/records';
import { showNumber } from '@/lib/numbers/job-number';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { decideOffer } from '@/lib/quotes/decide-offer';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { listQuotes } from '@/lib/quotes/list-quotes';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import { quoteChangesSince } from '@/lib/quotes/quote-changes-since';
import { askedQuoteData, jobQuoteData } from '@/lib/quotes/quote-data';
import { repairFormData } from '@/lib/quotes/repair-form-data';
import { turnDown } from '@/lib/quotes/turn-down';
import { resetDatabase, useDatabase } from '@/tests/database';
import { lettersOf, textOf } from '@/tests/documents/read-pdf';
import { assessedJob } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');
const LATER = new Date('2026-12-03T10:00:00Z');
const BY_STAFF = { actor: BENCH, now: NOW };

let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
}, 60_000);

const said = (bytes: Uint8Array) => lettersOf(textOf(bytes));

describe('the paper of a quote that was asked for', () => {
  it('is there once a price was sent, with its lines, its day and a link to answer', async () => {
    const { quoteId, token } = await makeRequest({ now: NOW });
    expect(await askedQuoteData(await quoteNow(quoteId))).toBeNull();
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    const data = await askedQuoteData(await quoteNow(quoteId), { token });
    if (!data) throw new Error('no paper');
    expect(data).toMatchObject({ revision: 1, validUntil: '2026-12-31', outcome: null, before: null });
    const linked = await findQuoteByToken(data.answerUrl?.split('/').at(-1) ?? '');
    expect(linked?.quoteId).toBe(quoteId);
    const text = said(await drawQuote(data));
    for (const each of [
      'Socket rebuilt with wire',
      '£96.00 with VAT',
      'VAT 20%',
      'Two pads are gone.',
      'It usually takes 7 working days from the day the unit arrives.',
      'Answer by Thursday 31 December 2026',
      `/quote/${token}`,
    ])
      expect(text).toContain(lettersOf(each));
  });

  it('holds no private link where staff open it', async () => {
    const { quoteId, token } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    const quote = await quoteNow(quoteId);
    const [data, form] = [await askedQuoteData(quote), await repairFormData(quote)];
    if (!data || !form) throw new Error('no paper');
    expect(data.answerUrl).toBeNull();
    for (const bytes of [await drawQuote(data), await drawRepairForm(form)])
      expect(said(bytes)).not.toContain(token);
  });

  it('states the difference to the price before, and what became of it', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: LATER, amount: 9000 });
    await decideQuote({
      quoteId,
      revision: 2,
      decision: 'accepted',
      now: LATER,
    });
    const quote = await quoteNow(quoteId);
    const data = await askedQuoteData(quote);
    expect(data?.before).toEqual({ revision: 1, gross: 9600 });
    expect(data?.outcome).toMatch(
      /^Your answer of Thursday 3 December 2026: Yes to quote .+, revision 2: .+ Total with tax £90\.00, held until/,
    );
    expect((await askedQuoteData(quote, { revision: 1 }))?.outcome).toBe(
      'This price was taken back or replaced by a later one, and no longer stands.',
    );
    expect(await askedQuoteData(quote, { revision: 7 })).toBeNull();
  });

  it('promises a price and no repair where only the inspection is offered', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    const quote = await quoteNow(quoteId);
    const inspected = {
      ...quote,
      revisions: quote.revisions.map((revision) => ({
        ...revision,
        lines: revision.lines.map((line) => ({ ...line, kind: 'inspection-fee' })),
      })),
    };
    expect((await askedQuoteData(inspected))?.ifYes.at(-1)).toContain('The inspection costs £96.00');
    expect((await askedQuoteData(quote))?.ifYes.at(-1)).toContain('You pay £96.00');
    const form = await repairFormData(inspected);
    expect(form?.fields.find(({ key }) => key === 'price')?.entries[0]?.name).toBe('Method of calculation');
  });

  it('names what exempts a line, and no tax where there is none', async () => {
    await db.workshop.update({
      where: { id: 1 },
      data: { taxExemptReason: 'Exempt by the small-firm rule.' },
    });
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    const quote = await quoteNow(quoteId);
    const recast = (taxCategory: string) => ({
      ...quote,
      revisions: quote.revisions.map((revision) => ({
        ...revision,
        lines: revision.lines.map((line) => ({ ...line, taxCategory, taxRateBps: 0 })),
      })),
    });
    expect((await askedQuoteData(recast('E')))?.price.taxNotes).toEqual(['Exempt by the small-firm rule.']);
    expect((await askedQuoteData(recast('O')))?.price.taxName).toBeNull();
  });
});

describe('the repair form of a quote', () => {
  it('holds for its 30 days, and says postage as a service of its own', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    expect(await repairFormData(await quoteNow(quoteId))).toBeNull();
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    const quote = await quoteNow(quoteId);
    const posted = {
      ...quote,
      revisions: quote.revisions.map((revision) => ({
        ...revision,
        isGross: false,
        lines: revision.lines.map((line) => ({
          ...line,
          kind: 'postage',
          description: 'Courier',
          amountMinor: 1000,
        })),
      })),
    };
    const form = await repairFormData(posted);
    if (!form) throw new Error('no form');
    expect(form).toMatchObject({ providedOn: '2026-12-01', validUntil: '2026-12-31' });
    // 10.00 before tax at 20 %.
    expect(said(await drawRepairForm(form))).toContain(lettersOf('Courier: £12.00, which is in the price'));
  });
});

// Directive (EU) 2024/1799: the total charged stays within the maximum price unless a new agreement is recorded. The rule
// is read in a copy, its wording from memory.
describe('what is charged', () => {
  const owedOf = async (jobId: string) => {
    const job = await readJob({ id: jobId });
    if (!job) throw new Error('no job');
    return { owed: factsOf(job).owed, paper: await jobQuoteData(job) };
  };

  it('stays at the agreed price while a higher one waits or was declined, and rises with a yes', async () => {
    const jobId = await assessedJob(world, NOW);
    expect((await owedOf(jobId)).owed).toBe(7200);
    const revision = await askPrice(jobId, NOW);
    const asked = await owedOf(jobId);
    expect(asked.owed).toBe(7200);
    expect(asked.paper).toMatchObject({ revision, before: { gross: 7200 }, outcome: null });
    const answer = { jobId, revision, actor: { kind: 'customer' }, now: NOW } as const;
    await decideOffer({ ...answer, decision: 'accepted' });
    const agreed = await owedOf(jobId);
    expect(agreed.owed).toBe(asked.paper?.price.totals.gross);
    expect(agreed.paper?.outcome).toContain(': I agree to £');
    const written = await db.quoteRevision.findFirst({ where: { revision, quote: { jobId } } });
    expect(written).toMatchObject({ state: 'accepted', grossMinor: agreed.owed });
    // The words are the program's own, from the amounts on record.
    expect(written?.agreedText).toMatch(
      /^I agree to £\d+\.\d\d with tax for this repair, instead of £72\.00\.$/,
    );
  });

  it('is the return alone after a no, and its paper says so', async () => {
    const jobId = await assessedJob(world, NOW);
    const revision = await askPrice(jobId, NOW);
    await decideOffer({
      jobId,
      revision,
      decision: 'declined',
      actor: { kind: 'customer' },
      now: NOW,
    });
    const { owed, paper } = await owedOf(jobId);
    expect(owed).toBe(960);
    expect(paper?.price.lines).toEqual([
      { description: 'Return of the unit, unrepaired', quantity: '', amount: 960 },
    ]);
    expect(paper?.outcome).toContain(': I decline the new price');
  });
});

describe('the list of quotes', () => {
  it('shows what waits on us first, the oldest first, and finds by number, name and device', async () => {
    const ask = async (name: string, device: string, now: Date) =>
      makeRequest({ now, answers: { name, device, serial: '', email: `${name}@example.org` } });
    const late = await ask('Berit', 'Marram Two', LATER);
    const early = await ask('Ansel', 'Tideline HW-2', NOW);
    const priced = await ask('Corin', 'Oakum pedal', NOW);
    const gone = await ask('Dagny', 'Sprit 8', NOW);
    await makeQuote({ quoteId: priced.quoteId, repairId: world.repairId, now: NOW });
    await turnDown({ quoteId: gone.quoteId, version: 1, text: 'No parts are made.', ...BY_STAFF });
    const all = await listQuotes({ group: null, q: '', page: 1 });
    expect(all.quotes.map(({ number }) => number)).toEqual(
      [early, late, priced, gone].map(({ number }) => number),
    );
    expect(all.total).toBe(4);
    expect(Object.fromEntries(all.counts)).toEqual({ us: 2, customer: 1, ended: 1 });
    expect(all.quotes[2]).toMatchObject({ gross: 9600, heldUntil: '2026-12-31', state: 'quoted' });
    const found = async (q: string) =>
      (await listQuotes({ group: null, q, page: 1 })).quotes.map(({ customer }) => customer);
    expect(await found(showNumber(late.number))).toEqual(['Berit']);
    expect(await found('ansel')).toEqual(['Ansel']);
    expect(await found('oakum')).toEqual(['Corin']);
    await db.quoteRequest.update({ where: { quoteId: late.quoteId }, data: { phone: '+44 20 7946 0123' } });
    expect(await found('020 7946 0123')).toEqual(['Berit']);
    expect(await found(priced.number.slice(2, 7))).toEqual(['Corin']);
    expect(await found('%')).toEqual([]);
    expect((await listQuotes({ group: 'ended', q: '', page: 1 })).total).toBe(1);
    expect(await listQuotes({ group: null, q: '', page: 99 })).toEqual(all);
  });

  it('is where the search box leads the number of a request to', async () => {
    const { number } = await makeRequest({ now: NOW });
    expect(await placeOf(showNumber(number))).toEqual({ place: 'quote', number });
    expect((await quoteByNumber(showNumber(number).toLowerCase()))?.number).toBe(number);
    expect(await quoteByNumber('J4K7QX290')).toBeNull();
  });

  it('tells whoever comes second what happened meanwhile', async () => {
    const { quoteId, number } = await makeRequest({ now: NOW });
    await askCustomer({ quoteId, version: 1, text: 'Does it hum?', ...BY_STAFF });
    await expect(
      turnDown({ quoteId, version: 1, text: 'No parts are made.', ...BY_STAFF }),
    ).rejects.toMatchObject({ code: 'conflict' });
    expect(await quoteChangesSince(number, 1)).toEqual([
      '1 Dec 2026, 10:00, Nils Pier: Question to the customer',
    ]);
  });
});
