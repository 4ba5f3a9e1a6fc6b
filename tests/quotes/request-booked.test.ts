import { beforeEach, describe, expect, it } from 'vitest';
import { dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { book } from '@/lib/jobs/book';
import { readBookingRepair } from '@/lib/jobs/booking-repair';
import { readDraft, saveStep } from '@/lib/jobs/draft';
import { factsOf } from '@/lib/jobs/facts';
import { moveJob } from '@/lib/jobs/move';
import { findJobByToken } from '@/lib/jobs/private-link';
import { readJob } from '@/lib/jobs/records';
import { nextStep } from '@/lib/jobs/rules/booking';
import { slipData } from '@/lib/jobs/slip-data';
import { drawMail } from '@/lib/mail/draw';
import { startBooking } from '@/lib/quotes/book-quote';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { agreedRevision } from '@/lib/quotes/records';
import { resetDatabase, useDatabase } from '@/tests/database';
import { takeIn, versionOf } from '@/tests/makers/course';
import { ADDRESS } from '@/tests/makers/job';
import { bookAtQuote, makeQuote, makeRequest, quoteNow } from '@/tests/makers/quote';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const NOW = new Date('2026-12-01T10:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;
let quoteId = '';

beforeEach(async () => {
  await resetDatabase();
  world = await makeWorkshop(NOW);
  quoteId = (await makeRequest({ now: NOW })).quoteId;
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW, validDays: 60 });
  await makeQuote({ quoteId, repairId: world.repairId, now: NOW, amount: 9000, validDays: 60 });
}, 60_000);

const accept = () => decideQuote({ quoteId, revision: 2, decision: 'accepted', now: NOW });

async function fill(token: string): Promise<void> {
  const parcel = { accessories: [], otherAccessory: '', battery: 'healthy', data: 'none' as const };
  await saveStep({ token, step: 'parcel', answers: parcel, now: NOW });
  await saveStep({ token, step: 'address', answers: ADDRESS, now: NOW });
}

describe('booking an accepted quote', () => {
  it('waits for the yes', async () => {
    await expect(startBooking({ quoteId, now: NOW })).rejects.toMatchObject({ code: 'conflict' });
  });

  it('opens at the first step that nothing is known of, and comes back to the same draft', async () => {
    await accept();
    const token = await startBooking({ quoteId, now: NOW });
    const draft = await readDraft(token);
    expect(draft?.answers).toMatchObject({
      unit: { serial: 'HW2-10480-K' },
      problem: { history: ['dropped'] },
    });
    expect(nextStep(draft?.answers ?? {})).toBe('parcel');
    expect(await startBooking({ quoteId, now: NOW })).toBe(token);
    expect(await db.bookingDraft.count()).toBe(1);
  });

  it('shows the agreed price of a repair that is on no list', async () => {
    await accept();
    await db.repair.update({ where: { id: world.repairId }, data: { isListed: false } });
    expect(await readBookingRepair(world.repairId)).toBeNull();
    const shown = await readBookingRepair(world.repairId, quoteId);
    expect(shown).toMatchObject({ grossMinor: 9000, workingDays: 7 });
    expect(shown?.quote).toMatchObject({
      price: { lines: [{ description: 'Socket rebuilt with wire', amount: 9000 }] },
      known: { name: 'Ines Farrow', email: 'ines.farrow@example.org' },
    });
  });

  it('gives the quote to the job, the agreed revision as it was', async () => {
    await accept();
    const before = agreedRevision(await quoteNow(quoteId));
    const token = await startBooking({ quoteId, now: NOW });
    await fill(token);
    const booked = await book({ draftToken: token, shownMinor: 9000, now: NOW });
    const job = await readJob({ number: booked.number });
    const quote = await quoteNow(quoteId);
    expect(job?.quotes.map(({ id }) => id)).toEqual([quoteId]);
    expect(job && factsOf(job).owed).toBe(9000);
    expect(job?.stage).toBe('booked');
    expect(quote.request.state).toBe('booked');
    expect(quote.job?.number).toBe(booked.number);
    expect(agreedRevision(quote)).toEqual(before);
    expect(quote.events.at(-1)).toMatchObject({ kind: 'booked', data: { jobNumber: booked.number } });
    expect(await book({ draftToken: token, shownMinor: 9000, now: NOW })).toMatchObject({
      number: booked.number,
      isNew: false,
    });
    expect(await findJobByToken(booked.token)).toMatchObject({ jobId: job?.id });
  });

  it('is told, when the booking is cancelled, that the price ended with it', async () => {
    const { jobId } = await bookAtQuote({ quoteId, now: NOW });
    const version = await versionOf(jobId);
    await moveJob({ jobId, version, move: 'cancel', note: '', actor: { kind: 'customer' }, now: NOW });
    const { text } = await drawMail(await db.mail.findFirstOrThrow({ where: { template: 'job-cancelled' } }));
    expect(text).toContain('ask us for a price again');
    expect(text).not.toContain('price list');
  });

  it('is promised, when the unit arrives, for the days of the quote and not of the catalogue', async () => {
    await accept();
    const token = await startBooking({ quoteId, now: NOW });
    await fill(token);
    const { number } = await book({ draftToken: token, shownMinor: 9000, now: NOW });
    const job = await readJob({ number });
    await takeIn(job?.id ?? '', NOW);
    const here = await readJob({ number });
    // Seven working days after Tuesday 1 December 2026; the catalogue says five.
    expect(here?.promisedOn && dayFromDate(here.promisedOn)).toBe('2026-12-10');
    expect(here && (await slipData(here)).next.map(({ when }) => when)).toContain(
      'usually within 7 working days',
    );
  });

  it('happens once: another draft of the same quote is refused, and nothing of it is kept', async () => {
    await accept();
    const token = await startBooking({ quoteId, now: NOW });
    await fill(token);
    const begun = await db.bookingDraft.findFirstOrThrow();
    const { hashToken } = await import('@/lib/jobs/private-link');
    await db.bookingDraft.create({
      data: {
        tokenHash: hashToken('second'),
        repairId: begun.repairId,
        quoteId,
        answers: (await readDraft(token))?.answers ?? {},
        createdAt: NOW,
        updatedAt: NOW,
      },
    });
    await book({ draftToken: token, shownMinor: 9000, now: NOW });
    await expect(book({ draftToken: 'second', shownMinor: 9000, now: NOW })).rejects.toMatchObject({
      code: 'conflict',
    });
    await expect(startBooking({ quoteId, now: NOW })).rejects.toMatchObject({ code: 'conflict' });
    expect(await db.job.count()).toBe(1);
    expect(await db.customer.count()).toBe(1);
  });
});
