import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { guardText } from '@/lib/catalogue/rules/list-cells';
import { db } from '@/lib/db/client';
import { creditInvoice } from '@/lib/invoices/credit-invoice';
import { isMonth, journalOf } from '@/lib/invoices/journal';
import { listEnteredSince, takenMonths } from '@/lib/invoices/list-entered-since';
import { listInvoices } from '@/lib/invoices/list-invoices';
import { listToGiveBack, listToGiveBackToday } from '@/lib/invoices/list-to-give-back';
import { JOURNAL_HEAD, type JournalPaper, journalRows } from '@/lib/invoices/rules/journal';
import { type Entry, statementRows } from '@/lib/invoices/rules/statement';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { listSinceFiles } from '@/lib/invoices/since-files';
import { statementOf } from '@/lib/invoices/statement';
import { type AskedJournal, takeJournal } from '@/lib/invoices/take-journal';
import { recordPayment } from '@/lib/jobs/record-payment';
import { decimalText } from '@/lib/money/amount';
import { readMoney } from '@/lib/money/read-money';
import { useDatabase } from '@/tests/database';
import { assessedJob, proved, takeMove } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

const NOW = new Date('2026-11-25T09:00:00Z');

const minor = (text: string | undefined, currency: string) => {
  if (text === undefined || text === '') return 0;
  const read = readMoney(text, currency);
  if (!read.ok) throw new Error(`not an amount: ${text}`);
  return read.minor;
};
const column = (name: (typeof JOURNAL_HEAD)[number]) => JOURNAL_HEAD.indexOf(name);

describe('the journal', () => {
  const paper = fc
    .record({
      kind: fc.constantFrom('invoice' as const, 'credit-note' as const),
      currency: fc.constantFrom('EUR', 'JPY', 'KWD'),
      lines: fc.array(
        fc.record({
          amount: fc.integer({ min: -5000, max: 90_000 }),
          category: fc.constant('S' as const),
          rateBps: fc.constantFrom(2000, 500, 1750),
        }),
        { minLength: 1, maxLength: 5 },
      ),
      isGross: fc.boolean(),
    })
    .map(({ kind, currency, lines, isGross }) => {
      const totals = invoiceTotals(lines, isGross);
      const paper: JournalPaper = {
        kind,
        number: '2026-00001',
        corrects: null,
        on: day('2026-11-25'),
        job: 'J',
        customer: '=cmd()',
        currency,
        breakdown: totals.breakdown,
        rounding: totals.rounding,
      };
      return { paper, payable: totals.payable };
    });

  it('has rows that come to what each document is payable, in any currency', () => {
    fc.assert(
      fc.property(paper, ({ paper: given, payable }) => {
        const rows = journalRows([given], []);
        const sum = (name: (typeof JOURNAL_HEAD)[number]) =>
          rows.reduce((all, row) => all + minor(row[column(name)], given.currency), 0);
        const sign = given.kind === 'invoice' ? 1 : -1;
        expect(sum('Total') - sign * payable).toBe(0);
        expect(sum('Net') + sum('Tax') + sum('Rounding')).toBe(sum('Total'));
        for (const row of rows) expect(row).toHaveLength(JOURNAL_HEAD.length);
      }),
    );
  });

  it('names rates in per cent, the postage of a claim as such, and papers before payments of their day', () => {
    const on = day('2026-11-25');
    const about = { on, job: 'J', customer: 'Maren Holt', currency: 'EUR' };
    const breakdown = [{ category: 'S', rateBps: 550, base: 1000, tax: 55 }] as const;
    const own = { kind: 'invoice', number: '2026-00001', corrects: null, breakdown, rounding: -1 } as const;
    const postage = { enteredOn: on, amount: -500, purpose: 'claim-postage', method: 'card', reference: '' };
    const rows = journalRows([{ ...about, ...own }], [{ ...about, ...postage }]);
    const names = ['Kind', 'Tax category', 'Rate %', 'Rounding', 'Total', 'Received'] as const;
    expect(rows.map((row) => names.map((name) => row[column(name)]))).toEqual([
      ['invoice', 'S', '5.5', '0.00', '10.55', ''],
      ['invoice', '', '', '-0.01', '-0.01', ''],
      ['postage of a claim', '', '', '', '', '-5.00'],
    ]);
  });

  it('has no cell that a spreadsheet would run', () => {
    for (const text of ['=1+1', '+1', '-1', '@x', '\tx', '\rx', '\n=x'])
      expect(guardText(text)).toBe(`'${text}`);
    expect(guardText('Maren Holt')).toBe('Maren Holt');
    expect(isMonth('2026-11')).toBe(true);
    for (const text of ['2026-13', '2026-1', '', '0000-01', "2026-11'--"]) expect(isMonth(text)).toBe(false);
  });
});

describe('a statement', () => {
  it('runs on from entry to entry and ends at their sum', () => {
    const entry = fc.record({
      on: fc.integer({ min: 0, max: 40 }).map((days) => addDays(day('2026-11-01'), days)),
      kind: fc.constantFrom('invoice', 'credit-note', 'payment', 'given-back'),
      what: fc.constantFrom('I-1', 'I-2', 'card'),
      job: fc.constantFrom('J-1', 'J-2'),
      amount: fc.integer({ min: -9000, max: 9000 }),
    });
    fc.assert(
      fc.property(fc.array(entry), (entries: Entry[]) => {
        const rows = statementRows(entries);
        expect(rows).toHaveLength(entries.length);
        expect(statementRows(entries.toReversed())).toEqual(rows);
        expect(rows.at(-1)?.balance ?? 0).toBe(entries.reduce((sum, each) => sum + each.amount, 0));
        rows.forEach((row, place) => {
          expect(row.balance - (rows[place - 1]?.balance ?? 0)).toBe(row.amount);
          if (place > 0) expect((rows[place - 1]?.on ?? '') <= row.on).toBe(true);
        });
      }),
    );
  });
});

describe('the books of a workshop', () => {
  useDatabase();
  const begin = madeOnce(threeJobs);
  let made: Awaited<ReturnType<typeof threeJobs>>;
  beforeEach(async () => {
    made = await begin();
  }, 60_000);

  const pay = (jobId: string, amount: number, receivedOn = '2026-11-25') =>
    recordPayment({
      jobId,
      amount,
      method: 'card',
      reference: '=2+2',
      receivedOn: day(receivedOn),
      actor: BENCH,
      now: new Date(`${receivedOn}T09:00:00Z`),
    });

  async function threeJobs() {
    const world = await makeWorkshop(NOW);
    const jobs = [];
    for (const at of ['2026-11-25T09:00:00Z', '2026-11-26T09:00:00Z', '2026-12-01T09:00:00Z']) {
      const now = new Date(at);
      const jobId = await assessedJob(world, now);
      await takeMove(jobId, 'start-bench', now);
      await proved(world, jobId, now);
      jobs.push(jobId);
    }
    const [first = '', second = '', third = ''] = jobs;
    return { world, first, second, third };
  }

  it('list invoices by state, and find them by number, job and name', async () => {
    const { first, second } = made;
    await pay(first, 7200);
    // What posting the unit of a covered claim cost is paid back beside the price, and leaves it paid.
    const { id: _, ...paid } = await db.payment.findFirstOrThrow();
    await db.payment.create({ data: { ...paid, amountMinor: -500, purpose: 'claim-postage' } });
    await creditInvoice({
      number: '2026-00002',
      choice: 'everything',
      reason: 'x',
      actor: OWNER,
      now: new Date('2026-12-02T09:00:00Z'),
    });
    const numbers = async (text: string, state: 'open' | 'paid' | 'credited' | null) =>
      (await listInvoices({ text, state, page: 1 })).rows.map((row) => row.number);
    expect(await numbers('', null)).toEqual(['2026-00004', '2026-00003', '2026-00002', '2026-00001']);
    expect(await numbers('', 'open')).toEqual(['2026-00003']);
    expect(await numbers('', 'paid')).toEqual(['2026-00001']);
    expect(await numbers('', 'credited')).toEqual(['2026-00002']);
    expect(await numbers('00003', null)).toEqual(['2026-00003']);
    const { number } = await db.job.findUniqueOrThrow({ where: { id: second } });
    expect(await numbers(number.toLowerCase(), null)).toEqual(['2026-00004', '2026-00002']);
    expect(await numbers('maren', null)).toHaveLength(4);
    expect(await numbers('%', null)).toEqual([]);
    const onlyPage = await listInvoices({ text: '', state: null, page: 1 });
    expect(await listInvoices({ text: '', state: null, page: 2 })).toEqual(onlyPage);
    expect(await listInvoices({ text: 'nobody', state: null, page: 2 })).toEqual({
      rows: [],
      total: 0,
      page: 1,
    });
  });

  it('list what is to give back: overpaid, credited after it was paid, and paid for a booking that was cancelled', async () => {
    const { world, first, second, third } = made;
    expect(await listToGiveBack('Europe/London')).toEqual([]);
    await pay(first, 7200);
    await pay(second, 7300);
    await pay(third, 7200);
    const credited = await db.invoice.findFirstOrThrow({ where: { jobId: third }, select: { number: true } });
    const now = new Date('2026-12-02T09:00:00Z');
    await creditInvoice({ number: credited.number, choice: 'everything', reason: 'x', actor: OWNER, now });
    const booked = await makeBooking({ repairId: world.repairId, now });
    await pay(booked.jobId, 5000);
    const list = () => listToGiveBack('Europe/London');
    const amounts = async () => (await list()).map(({ amount }) => amount);
    // A booking may be paid ahead: nothing of that is to give back before it is cancelled.
    expect(await amounts()).toEqual([100, 7200]);
    await takeMove(booked.jobId, 'cancel', now);
    expect((await list()).map(({ amount, since, dueOn }) => [amount, since, dueOn])).toEqual([
      [100, '2026-11-25', '2026-12-09'],
      [7200, '2026-12-02', '2026-12-16'],
      [5000, '2026-12-02', '2026-12-16'],
    ]);
    await pay(second, -100);
    expect(await amounts()).toEqual([7200, 5000]);
    // Today shows what it found within the last minute, and what was given back since is on it no more.
    const onToday = async () => (await listToGiveBackToday('Europe/London', now)).map(({ amount }) => amount);
    expect(await onToday()).toEqual([7200, 5000]);
    await pay(third, -7200);
    expect(await onToday()).toEqual([5000]);
  });

  it('know what was entered after the journal of a month was taken, and give it in one file that can be had again', async () => {
    const { first, second } = made;
    const take = (asked: AskedJournal, at: string, month = '2026-11') =>
      takeJournal({ month, asked, actor: OWNER, now: new Date(at) });
    const since = async () => (await listEnteredSince()).map((row) => [row.month, row.payments, row.amount]);
    const received = (text: string | null) =>
      (parse(text ?? '', { bom: true }) as string[][])
        .slice(1)
        .map((row) => [row[column('Received')], row[column('Date')], row[column('Entered on')]])
        .filter(([amount]) => amount !== '');
    await pay(first, 1000);
    // A month that still runs is not taken, and has nothing that came after.
    expect(received(await take('whole', '2026-11-26T09:00:00Z'))).toHaveLength(1);
    expect(await take('since', '2026-11-26T09:00:00Z')).toBeNull();
    expect(await db.journalTaking.count()).toBe(0);
    expect(await take('since', '2026-12-01T09:00:00Z')).toBeNull();

    expect(received(await take('whole', '2026-12-01T09:00:00Z'))).toEqual([
      ['10.00', '2026-11-25', '2026-11-25'],
    ]);
    await pay(second, 900, '2026-12-02');
    expect(await since()).toEqual([]);
    const ofNovember = {
      jobId: second,
      method: 'bank transfer',
      reference: '',
      receivedOn: day('2026-11-30'),
      actor: BENCH,
    } as const;
    await recordPayment({ ...ofNovember, amount: 600, now: new Date('2026-12-02T09:00:00Z') });
    expect(await since()).toEqual([['2026-11', 1, 600]]);
    expect(await takenMonths(['2026-10', '2026-11', '2026-12'])).toEqual(['2026-11']);
    // Looking something up takes nothing, and shows all there is.
    expect(received(await take('whole', '2026-12-03T08:00:00Z'))).toHaveLength(2);
    expect(await since()).toHaveLength(1);
    expect([await db.journalTaking.count(), await listSinceFiles(9)]).toEqual([1, []]);

    const late = [['6.00', '2026-11-30', '2026-12-02']];
    expect(received(await take('since', '2026-12-03T09:00:00Z'))).toEqual(late);
    expect(await since()).toEqual([]);
    // It did not arrive, or was clicked twice.
    expect(received(await take('since', '2026-12-03T09:00:00Z'))).toEqual(late);
    await recordPayment({ ...ofNovember, amount: 700, now: new Date('2026-12-04T09:00:00Z') });
    const next = [['7.00', '2026-11-30', '2026-12-04']];
    expect(received(await take('since', '2026-12-05T09:00:00Z'))).toEqual(next);
    const files = await listSinceFiles(9);
    expect(files.map(({ month, at, payments }) => [month, at.toISOString().slice(0, 10), payments])).toEqual([
      ['2026-11', '2026-12-05', 1],
      ['2026-11', '2026-12-03', 1],
    ]);
    const again = async (id: string | undefined, month?: string) =>
      take({ again: id ?? '' }, '2026-12-06T09:00:00Z', month);
    expect(received(await again(files[1]?.id))).toEqual(late);
    expect(received(await again(files[0]?.id))).toEqual(next);
    expect(await again(files[0]?.id, '2026-10')).toBeNull();
    const whole = await db.journalTaking.findFirstOrThrow({ orderBy: { at: 'asc' } });
    expect(await again(whole.id)).toBeNull();
    expect(await db.journalTaking.count()).toBe(3);
  });

  it('export a month whose columns are its invoices and payments', async () => {
    const { first, second } = made;
    await pay(first, 7200);
    await pay(second, 1000, '2026-12-01');
    await creditInvoice({
      number: '2026-00001',
      choice: new Map([[0, 1001]]),
      reason: 'x',
      actor: OWNER,
      now: NOW,
    });
    await pay(first, -1001);
    const text = await journalOf('2026-11', 'Europe/London');
    expect(text.startsWith('\uFEFF')).toBe(true);
    const [head, ...rows] = parse(text, { bom: true }) as string[][];
    expect(head).toEqual([...JOURNAL_HEAD]);
    const sum = (name: (typeof JOURNAL_HEAD)[number]) =>
      rows.reduce((all, row) => all + minor(row[column(name)], 'GBP'), 0);
    const documents = await db.invoice.findMany({ where: { issuedOn: { lt: new Date('2026-12-01') } } });
    const signed = (key: 'netMinor' | 'taxMinor' | 'roundingMinor' | 'payableMinor') =>
      documents.reduce((all, row) => all + (row.kind === 'invoice' ? row[key] : -row[key]), 0);
    expect([sum('Net'), sum('Tax'), sum('Rounding'), sum('Total')]).toEqual([
      signed('netMinor'),
      signed('taxMinor'),
      signed('roundingMinor'),
      signed('payableMinor'),
    ]);
    expect(sum('Total')).toBe(7200 + 7200 - 1001);
    expect(sum('Received')).toBe(7200 - 1001);
    expect(rows.filter((row) => row[column('Kind')] === 'payment')[0]?.[column('Reference')]).toBe("'=2+2");
    expect(rows.map((row) => row[column('Date')])).toEqual(rows.map((row) => row[column('Date')]).toSorted());
    expect(decimalText(sum('Received'), 'GBP')).toBe('61.99');
    const [one, two] = await Promise.all(
      [first, second].map((id) => db.job.findUniqueOrThrow({ where: { id }, select: { number: true } })),
    );
    // 10.01 at 20 % is 8.34 + 1.67.
    const shown = [
      'Date',
      'Kind',
      'Number',
      'Corrects',
      'Job',
      'Tax category',
      'Rate %',
      'Net',
      'Tax',
    ] as const;
    const paid = ['Rounding', 'Total', 'Received', 'Method', 'Currency'] as const;
    expect(rows.map((row) => [...shown, ...paid].map((name) => row[column(name)]).join('|'))).toEqual([
      `2026-11-25|invoice|2026-00001||${one?.number}|S|20|60.00|12.00|0.00|72.00|||GBP`,
      `2026-11-25|credit note|2026-00004|2026-00001|${one?.number}|S|20|-8.34|-1.67|0.00|-10.01|||GBP`,
      `2026-11-25|payment|||${one?.number}|||||||72.00|card|GBP`,
      `2026-11-25|given back|||${one?.number}|||||||-10.01|card|GBP`,
      `2026-11-26|invoice|2026-00002||${two?.number}|S|20|60.00|12.00|0.00|72.00|||GBP`,
    ]);
  });

  it('export each day into its own month, the last one too', async () => {
    const { first } = made;
    for (const [amount, on] of [
      [100, '2026-10-31'],
      [200, '2026-11-01'],
      [300, '2026-11-30'],
      [400, '2026-12-01'],
      [500, '2026-12-31'],
    ] as const)
      await pay(first, amount, on);
    const received = async (month: string) =>
      (parse(await journalOf(month, 'Europe/London'), { bom: true }) as string[][])
        .map((row) => row[column('Received')])
        .filter((cell) => cell !== '' && cell !== 'Received');
    expect(await received('2026-11')).toEqual(['2.00', '3.00']);
    expect(await received('2026-12')).toEqual(['4.00', '5.00']);
  });

  it('state a customer’s account over all their jobs, whatever the capitals of the address', async () => {
    const { world, first, second } = made;
    await pay(first, 8000);
    const other = await makeBooking({ repairId: world.repairId, now: NOW });
    await db.customer.updateMany({
      where: { jobs: { some: { id: second } } },
      data: { email: 'Maren.Holt@Example.org' },
    });
    await db.customer.updateMany({
      where: { jobs: { some: { id: other.jobId } } },
      data: { email: 'someone.else@example.org' },
    });
    await pay(other.jobId, 500);
    const statement = await statementOf(first, 'GBP');
    expect(statement?.rows.map((row) => [row.kind, row.amount, row.balance])).toEqual([
      ['invoice', 7200, 7200],
      ['payment', -8000, -800],
      ['invoice', 7200, 6400],
      ['invoice', 7200, 13_600],
    ]);
    expect(statement?.owed).toBe(13_600);
    expect(await statementOf('no-such-job', 'GBP')).toBeNull();
  });

  it('state the account of one address, not of those that are like it, nor of everybody without one', async () => {
    const { first, second, third } = made;
    const have = (jobId: string, email: string) =>
      db.customer.updateMany({ where: { jobs: { some: { id: jobId } } }, data: { email } });
    await have(first, 'jo_hall@example.org');
    await have(second, 'jo.hall@example.org');
    await have(third, '%@example.org');
    const owed = async () => {
      const found = await Promise.all([first, second, third].map((jobId) => statementOf(jobId, 'GBP')));
      return found.map((statement) => statement?.owed);
    };
    expect(await owed()).toEqual([7200, 7200, 7200]);
    for (const jobId of [first, second]) await have(jobId, '');
    expect(await owed()).toEqual([7200, 7200, 7200]);
  });
});
