import { beforeAll, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { findEverywhere } from '@/lib/jobs/find-everywhere';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { bookAtQuote, makeQuote, makeRequest } from '@/tests/makers/quote';
import { makeCertificate } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-11-26T09:00:00Z');

let invoiced: { jobId: string };
let asked: { number: string };
let lotId: string;

beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  lotId = world.lotId;
  invoiced = await makeCertificate(world, new Date('2026-11-20T10:00:00Z'), 'HW2-77001-A');
  asked = await makeRequest({ now: NOW });
  const taken = await makeRequest({
    now: NOW,
    answers: { device: 'Marram Two', serial: 'MT2-4471', name: 'Berit Moss', email: 'berit@example.org' },
  });
  await makeQuote({ quoteId: taken.quoteId, repairId: world.repairId, now: NOW });
  await bookAtQuote({ quoteId: taken.quoteId, now: NOW });
  await db.lot.update({
    where: { id: lotId },
    data: { code: 'LOT-88/b', receivedOn: new Date('2026-11-02') },
  });
  for (let more = 0; more < 6; more += 1) await makeBooking({ repairId: world.repairId, now: NOW });
}, 60_000);

const found = (q: string, withInvoices = true) => findEverywhere({ q, withInvoices });

describe('what the search box finds', () => {
  it('shows the newest five of the jobs, and says how many there are', async () => {
    const rows = await found('sandmouth');
    const jobs = rows.filter(({ place }) => place === 'job');
    const all = await db.job.count({ where: { customer: { town: 'Sandmouth' } } });
    expect(jobs).toHaveLength(5);
    expect(jobs.every(({ total }) => total === all)).toBe(true);
    expect(jobs[0]).toMatchObject({ at: NOW, whose: 'Maren Holt' });
    expect(jobs.map(({ key }) => key)).not.toContain(
      (await db.job.findUniqueOrThrow({ where: { id: invoiced.jobId } })).number,
    );
  });

  it('has who only asked for a price, and leaves a quote to its job once one was booked', async () => {
    expect((await found('07700 900412')).filter(({ state }) => state === 'asked')).toMatchObject([
      { place: 'quote', key: asked.number, whose: 'Ines Farrow' },
    ]);
    expect(await found('MT2-4471')).toMatchObject([{ place: 'job' }]);
    // What the asker called the device is written on the quote alone.
    expect(await found('Marram')).toMatchObject([{ place: 'quote', state: 'booked' }]);
  });

  it('has a lot by a part of its code, on the day it came', async () => {
    expect(await found('lot 88')).toMatchObject([
      { place: 'lot', key: lotId, name: 'LOT-88/b', at: new Date('2026-11-02T00:00:00Z'), total: 1 },
    ]);
  });

  it('has an invoice by the name it was issued to, where its job has another, for who may see it', async () => {
    const { customerId } = await db.job.findUniqueOrThrow({ where: { id: invoiced.jobId } });
    const invoice = await db.invoice.findFirstOrThrow({ where: { jobId: invoiced.jobId } });
    const under = async (q: string) => (await found(q)).filter(({ place }) => place === 'invoice');
    expect(await under('maren holt')).toEqual([]);
    await db.customer.update({
      where: { id: customerId },
      data: { name: 'Tern Boats', email: 't@example.org' },
    });
    expect(await under('Maren Holt')).toMatchObject([{ key: invoice.number, whose: 'Maren Holt' }]);
    expect((await found('Maren Holt', false)).some(({ place }) => place === 'invoice')).toBe(false);
  });

  it.each(['', '  ', '%', 'nobody', 'J0000000'])('finds nothing for %j', async (q) => {
    expect(await found(q)).toEqual([]);
  });
});
