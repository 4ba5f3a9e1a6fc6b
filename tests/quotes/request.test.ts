import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { DAY_MS } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { findQuoteByToken } from '@/lib/jobs/private-link';
import { readUnanswered } from '@/lib/jobs/unanswered';
import { answerQuestion } from '@/lib/quotes/answer-question';
import { askCustomer } from '@/lib/quotes/ask-customer';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { agreedRevision, listRequests, openRevision } from '@/lib/quotes/records';
import { turnDown } from '@/lib/quotes/turn-down';
import { writeQuoteEvent } from '@/lib/quotes/write-quote-event';
import { writeToCustomer } from '@/lib/quotes/write-to-customer';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop, moveToAuckland } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');
const LATER = new Date('2026-12-02T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
}, 60_000);

const mailsOf = async (quoteId: string) =>
  (await db.mail.findMany({ where: { quoteId }, orderBy: { queuedAt: 'asc' } })).map(
    ({ template, toAddress }) => [template, toAddress],
  );

describe('asking for a price', () => {
  it('keeps what was told with its photos, opens a private link and writes a mail', async () => {
    const asked = await makeRequest({ now: NOW, photos: [somePhoto(), somePhoto()] });
    expect(asked.isNew).toBe(true);
    expect(asked.number).toMatch(/^Q[0-9A-Z]{8}$/);
    const quote = await quoteNow(asked.quoteId);
    expect(quote.request).toMatchObject({
      state: 'asked',
      serialKey: 'HW210480K',
      symptoms: ['It does not charge'],
      history: ['dropped'],
      emailKey: 'ines.farrow@example.org',
    });
    expect(quote.photos).toHaveLength(2);
    expect(quote.job).toBeNull();
    expect(await mailsOf(asked.quoteId)).toEqual([['quote-asked', 'ines.farrow@example.org']]);
    expect(await listRequests({ states: ['asked'] })).toMatchObject([{ number: asked.number, photos: 2 }]);
  });

  it('takes the name of a listed model from the catalogue', async () => {
    const { quoteId } = await makeRequest({
      now: NOW,
      answers: { model: world.modelId, device: 'recorder' },
    });
    expect((await quoteNow(quoteId)).request).toMatchObject({
      modelId: world.modelId,
      device: 'Tideline HW-2',
    });
  });

  it('answers a form sent twice as it did the first time', async () => {
    const formKey = randomUUID();
    const first = await makeRequest({ now: NOW, formKey });
    const again = await makeRequest({ now: NOW, formKey });
    expect(again).toEqual(first);
    expect(await db.quote.count()).toBe(1);
    expect(await db.mail.count()).toBe(1);
  });

  it('does not show somebody else’s quote to whoever sends its form’s key with another address', async () => {
    const formKey = randomUUID();
    const first = await makeRequest({ now: NOW, formKey });
    const other = await makeRequest({ now: NOW, formKey, answers: { email: 'tam.reed@example.org' } });
    expect(other.number).not.toBe(first.number);
    expect(await db.quote.count()).toBe(2);
  });

  it('keeps what is sent about another unit from the same form, as a browser that went back shows it', async () => {
    const formKey = randomUUID();
    const first = await makeRequest({ now: NOW, formKey });
    const other = await makeRequest({ now: NOW, formKey, answers: { device: 'Echo box EB-1', serial: '' } });
    expect(other.number).not.toBe(first.number);
    expect((await quoteNow(other.quoteId)).request).toMatchObject({ device: 'Echo box EB-1' });
  });

  it('keeps further words about the same unit from the same form, once', async () => {
    const formKey = randomUUID();
    const { quoteId } = await makeRequest({ now: NOW, formKey });
    const further = { now: NOW, formKey, answers: { problem: 'It hums as well, now that I listen' } };
    await makeRequest(further);
    await makeRequest(further);
    expect(await db.message.count({ where: { quoteId, text: { contains: 'hums as well' } } })).toBe(1);
  });
});

describe('asking again', () => {
  it('is joined to the open request about the same unit, back on the workshop’s side', async () => {
    const first = await makeRequest({ now: NOW, photos: [somePhoto()] });
    const { version } = await quoteNow(first.quoteId);
    await askCustomer({ quoteId: first.quoteId, version, text: 'Any sound?', actor: BENCH, now: NOW });
    const formKey = randomUUID();
    const more = {
      now: LATER,
      formKey,
      photos: [somePhoto()],
      answers: { email: 'INES.Farrow@example.org', serial: 'hw2 10480 k', problem: 'It is warm, too.' },
    };
    const again = await makeRequest(more);
    expect(again).toMatchObject({ number: first.number, isNew: false });
    const quote = await quoteNow(first.quoteId);
    expect(quote.request.state).toBe('asked');
    expect(quote.photos).toHaveLength(2);
    expect(quote.messages.map(({ author }) => author)).toEqual(['staff', 'customer']);
    expect(quote.messages[1]?.text).toContain('It is warm, too.');
    expect((await mailsOf(first.quoteId)).at(-1)).toEqual(['quote-joined', 'ines.farrow@example.org']);
    expect(await makeRequest(more)).toMatchObject({ number: first.number, isNew: false });
    expect((await quoteNow(first.quoteId)).messages).toHaveLength(2);
  });

  it('keeps what is told otherwise the second time in its message, and the first request as it was', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    const phone = '07700 900777';
    await makeRequest({ now: LATER, answers: { name: 'Ines Reed', phone, device: 'Tideline HW-3' } });
    const { request, messages } = await quoteNow(quoteId);
    expect(messages.at(-1)?.text.split('\n\n').at(-1)).toBe(
      'Name, as told this time: Ines Reed.\nTelephone, as told this time: 07700 900777.\nDevice, as told this time: Tideline HW-3.',
    );
    expect(request).toMatchObject({ name: 'Ines Farrow', phone: '07700 900412', device: 'Tideline HW-2' });
    await makeRequest({ now: LATER, answers: { phone: '', problem: 'It is warm, too.' } });
    expect((await quoteNow(quoteId)).messages.at(-1)?.text).not.toContain('as told this time');
  });

  it('is a request of its own for another unit, another address, or once a price was sent', async () => {
    const first = await makeRequest({ now: NOW });
    const numbers = [
      await makeRequest({ now: NOW, answers: { serial: 'HW2-99999-K' } }),
      await makeRequest({ now: NOW, answers: { serial: '' } }),
      await makeRequest({ now: NOW, answers: { email: 'tam.reed@example.org' } }),
    ];
    await makeQuote({ quoteId: first.quoteId, repairId: world.repairId, now: NOW });
    numbers.push(await makeRequest({ now: LATER }));
    expect(numbers.every(({ isNew }) => isNew)).toBe(true);
    expect(new Set([first, ...numbers].map(({ number }) => number)).size).toBe(5);
  });

  it('cannot heap up photos without end', async () => {
    const photos = () => Array.from({ length: 8 }, somePhoto);
    for (let time = 0; time < 3; time += 1) await makeRequest({ now: NOW, photos: photos() });
    await expect(makeRequest({ now: NOW, photos: [somePhoto()] })).rejects.toMatchObject({ field: 'photos' });
  });
});

describe('questions first', () => {
  it('wait on the customer until they are answered, with photos', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    const { version } = await quoteNow(quoteId);
    await askCustomer({ quoteId, version, text: 'Does it charge at all?', actor: BENCH, now: NOW });
    expect((await quoteNow(quoteId)).request.state).toBe('questioned');
    const answer = {
      quoteId,
      text: 'Only when I hold it.',
      photos: [somePhoto()],
      formKey: randomUUID(),
      now: LATER,
    };
    await answerQuestion(answer);
    await answerQuestion(answer);
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('asked');
    expect(quote.messages).toHaveLength(2);
    expect(quote.events.map(({ kind }) => kind)).toEqual(['asked', 'questioned', 'answered']);
    expect((await mailsOf(quoteId)).map(([template]) => template)).toEqual([
      'quote-asked',
      'quote-question',
      'quote-answered',
    ]);
  });

  it('are refused to whoever saw an older page, and after a no', async () => {
    const { quoteId } = await makeRequest({ now: NOW });
    const stale = (await quoteNow(quoteId)).version;
    const ask = (version: number) =>
      askCustomer({ quoteId, version, text: 'Does it charge?', actor: BENCH, now: NOW });
    await ask(stale);
    await expect(ask(stale)).rejects.toMatchObject({ code: 'conflict' });
    const { version } = await quoteNow(quoteId);
    await turnDown({ quoteId, version, text: 'No parts.', actor: BENCH, now: NOW });
    expect((await quoteNow(quoteId)).request.state).toBe('turned-down');
    await expect(answerQuestion({ quoteId, text: 'Why?', photos: [], now: NOW })).rejects.toMatchObject({
      code: 'conflict',
    });
    expect((await quoteNow(quoteId)).messages).toHaveLength(2);
  });
});

describe('a price', () => {
  let quoteId = '';
  beforeEach(async () => {
    quoteId = (await makeRequest({ now: NOW })).quoteId;
  });
  const send = (o: Partial<Parameters<typeof makeQuote>[0]> = {}) =>
    makeQuote({ quoteId, repairId: world.repairId, now: NOW, ...o });

  // An integer column of PostgreSQL ends at 2147483647.
  it('is refused in words where its lines come to more than can be kept', async () => {
    await expect(send({ amount: 2 ** 31 })).rejects.toMatchObject({ code: 'invalid', field: 'amount-0' });
    expect((await quoteNow(quoteId)).revisions).toEqual([]);
  });
  const decide = (decision: 'accepted' | 'declined', revision = 1, now = LATER) =>
    decideQuote({ quoteId, revision, decision, now });

  it('goes out with lines, tax, the days it holds and takes, and a mail', async () => {
    expect(await send()).toEqual({ revision: 1, gross: 9600 });
    const quote = await quoteNow(quoteId);
    expect(quote.request).toMatchObject({ state: 'quoted', repairId: world.repairId });
    // 9600 with 20 % inside: net 8000, tax 1600.
    expect(openRevision(quote)).toMatchObject({ netMinor: 8000, taxMinor: 1600, workingDays: 7 });
    expect(openRevision(quote)?.validUntil.toISOString().slice(0, 10)).toBe('2026-12-31');
    expect((await mailsOf(quoteId)).at(-1)).toEqual(['quote-sent', 'ines.farrow@example.org']);
  });

  it('holds 30 days at least', async () => {
    await expect(send({ validDays: 29 })).rejects.toMatchObject({ code: 'invalid', field: 'validDays' });
    await expect(send({ repairId: randomUUID() })).rejects.toMatchObject({ field: 'repairId' });
  });

  it('while it is held is not raised or cut short, unless the customer asked for the change', async () => {
    await send({ validDays: 60 });
    await expect(send({ now: LATER, amount: 9700, validDays: 60 })).rejects.toMatchObject({
      field: 'customerAsked',
    });
    await expect(send({ now: LATER, amount: 9000 })).rejects.toMatchObject({ field: 'validDays' });
    await send({ now: LATER, amount: 12_000, validDays: 60, customerAsked: true });
    const quote = await quoteNow(quoteId);
    expect(quote.revisions.map(({ state }) => state)).toEqual(['replaced', 'sent']);
    expect(quote.events.at(-1)?.data).toMatchObject({ revision: 2, customerAsked: true });
    await expect(decide('accepted', 1)).rejects.toMatchObject({ code: 'conflict' });
  });

  it('may be raised once it is held no longer', async () => {
    await send();
    expect(await send({ now: new Date('2027-01-01T10:00:00Z'), amount: 11_000 })).toMatchObject({
      revision: 2,
    });
  });

  it('that is accepted is frozen with who, when and the words, and accepted twice changes nothing', async () => {
    await send();
    await decide('accepted');
    await decide('accepted');
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('accepted');
    expect(agreedRevision(quote)).toMatchObject({
      decidedBy: 'customer',
      decidedAt: LATER,
      agreedText: expect.stringMatching(
        /^Yes to quote .+, revision 1: .+ Total with tax £96\.00, held until/,
      ),
    });
    expect(quote.events.filter(({ kind }) => kind === 'decided')).toHaveLength(1);
    await expect(decide('declined')).rejects.toMatchObject({ code: 'conflict' });
    await expect(send({ now: LATER })).rejects.toMatchObject({ code: 'conflict' });
    await expect(
      db.quoteRevision.updateMany({ where: { quoteId }, data: { agreedText: 'something else' } }),
    ).rejects.toThrow();
    await expect(db.quoteLine.updateMany({ data: { amountMinor: 1 } })).rejects.toThrow();
  });

  it('can be accepted to the end of its last day in the workshop’s zone, and not after', async () => {
    await moveToAuckland();
    await send();
    await expect(decide('accepted', 1, new Date('2026-12-31T11:00:00Z'))).rejects.toMatchObject({
      code: 'conflict',
    });
    await decide('accepted', 1, new Date('2026-12-31T10:59:59Z'));
  });

  it('is held from the day on which it was sent in that zone', async () => {
    await moveToAuckland();
    await send({ now: new Date('2026-12-01T11:00:00Z') });
    expect(openRevision(await quoteNow(quoteId))?.validUntil).toEqual(new Date('2027-01-01T00:00:00Z'));
  });

  it('is said to stay as it is beside a message, but not once its last day is over', async () => {
    await send();
    const day = (await quoteNow(quoteId)).revisions[0]?.validUntil.toISOString().slice(0, 10);
    const told = async (text: string, now: Date) => {
      const { version } = await quoteNow(quoteId);
      await writeToCustomer({ quoteId, version, text, actor: BENCH, now });
      const mails = await db.mail.findMany({ where: { quoteId, template: 'message-from-workshop' } });
      return mails.map(({ data }) => data).filter((data) => JSON.stringify(data).includes(text));
    };
    const still = await told('Still so.', new Date(`${day}T12:00:00Z`));
    expect(still).toEqual([{ text: 'Still so.', goesOn: true }]);
    // Midnight is past, and the clock has not gone round yet.
    const over = new Date(Date.parse(`${day}T00:10:00Z`) + DAY_MS);
    expect(await told('Too late.', over)).toEqual([{ text: 'Too late.' }]);
    await decide('accepted');
    expect(await told('Thank you.', over)).toEqual([{ text: 'Thank you.', goesOn: true }]);
  });

  it('can be talked about without moving anything', async () => {
    const write = async (text: string) =>
      writeToCustomer({
        quoteId,
        version: (await quoteNow(quoteId)).version,
        text,
        actor: BENCH,
        now: LATER,
      });
    await expect(write('Too early.')).rejects.toMatchObject({ code: 'conflict' });
    await send();
    await answerQuestion({ quoteId, text: 'Is the postage in it?', photos: [], now: LATER });
    expect(await readUnanswered()).toMatchObject([{ of: 'quote', unit: 'Tideline HW-2', at: LATER }]);
    await write('It is.');
    expect(await readUnanswered()).toEqual([]);
    const quote = await quoteNow(quoteId);
    expect(quote.request.state).toBe('quoted');
    expect(quote.messages.map(({ author, text }) => [author, text])).toEqual([
      ['customer', 'Is the postage in it?'],
      ['staff', 'It is.'],
    ]);
    expect((await mailsOf(quoteId)).slice(-2).map(([template]) => template)).toEqual([
      'quote-answered',
      'message-from-workshop',
    ]);
    await decide('declined');
    await write('Shall we send a price without the knobs?');
    expect((await quoteNow(quoteId)).request.state).toBe('declined');
  });

  it('that is declined ends the quote, and owes nothing', async () => {
    await send();
    await decide('declined');
    expect((await quoteNow(quoteId)).request.state).toBe('declined');
    expect((await mailsOf(quoteId)).at(-1)?.[0]).toBe('quote-declined');
    await expect(decide('accepted')).rejects.toMatchObject({ code: 'conflict' });
  });
});

it('an event for another state or version is refused and leaves nothing', async () => {
  const { quoteId } = await makeRequest({ now: NOW });
  const write = (expected: { version?: number; states?: readonly 'quoted'[] }) =>
    transaction((tx) =>
      writeQuoteEvent(tx, {
        quoteId,
        actor: { kind: 'clock' },
        now: NOW,
        event: { kind: 'lapsed', data: { revision: 1 } },
        expected,
        to: 'lapsed',
      }),
    );
  await expect(write({ states: ['quoted'] })).rejects.toMatchObject({ code: 'conflict' });
  await expect(write({ version: 7 })).rejects.toMatchObject({ code: 'conflict' });
  const quote = await quoteNow(quoteId);
  expect([quote.version, quote.events.length, quote.request.state]).toEqual([1, 1, 'asked']);
});

it('a link opens its own quote only', async () => {
  const one = await makeRequest({ now: NOW });
  const two = await makeRequest({ now: NOW, answers: { email: 'tam.reed@example.org' } });
  expect((await findQuoteByToken(one.token))?.quoteId).toBe(one.quoteId);
  expect((await findQuoteByToken(two.token))?.quoteId).toBe(two.quoteId);
  expect(one.quoteId).not.toBe(two.quoteId);
  expect(await findQuoteByToken('x'.repeat(43))).toBeNull();
});
