import { unzipSync } from 'fflate';
import sharp from 'sharp';
import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { storePhoto } from '@/lib/files/photos';
import { hasFile } from '@/lib/files/store';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { addPhotos } from '@/lib/jobs/add-photo';
import { clockRound } from '@/lib/jobs/clock-round';
import { findJobByToken, newestTokenOf } from '@/lib/jobs/private-link';
import { renewLink } from '@/lib/jobs/renew-link';
import { endSearch, seekParcel } from '@/lib/jobs/seek-parcel';
import { sendMessage } from '@/lib/jobs/send-message';
import { erasePerson } from '@/lib/keeping/erase-person';
import { exportPerson } from '@/lib/keeping/export-person';
import { findPeople, findPerson } from '@/lib/keeping/records';
import { listSeen, noteSeen, subjectOf } from '@/lib/keeping/seen';
import { sweepPeople } from '@/lib/keeping/write-sweep';
import { decideQuote } from '@/lib/quotes/decide-quote';
import { resetDatabase, useDatabase } from '@/tests/database';
import { readyJob, sendBack, versionOf } from '@/tests/makers/course';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { ASKED, makeQuote, makeRequest } from '@/tests/makers/quote';
import { BENCH, makeWorkshop, OWNER } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const on = (text: string) => new Date(`${text}T10:00:00Z`);

useDatabase();
beforeEach(resetDatabase);

const PERSONAL = [
  ADDRESS.name,
  ADDRESS.email,
  ADDRESS.phone,
  ADDRESS.address1,
  ADDRESS.postcode,
  'in the rain',
];

/** A finished job of one person, with a photo, a message, a certificate and an invoice. */
async function finished() {
  const world = await makeWorkshop(NOW);
  const jobId = await readyJob(world, NOW);
  const red = await sharp({ create: { width: 40, height: 30, channels: 3, background: 'red' } })
    .png()
    .toBuffer();
  const stored = await storePhoto(new Uint8Array(red));
  if (!stored.ok) throw new Error(stored.reason);
  await addPhotos({ jobId, purpose: 'arrival', photos: [stored], actor: BENCH, now: NOW });
  await sendMessage({ jobId, text: 'It stood in the rain.', actor: { kind: 'customer' }, now: NOW });
  await sendBack(jobId, NOW);
  await clockRound(on('2026-12-20'));
  const { number } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
  await db.mail.updateMany({ data: { state: 'sent', sentAt: NOW } });
  return { world, jobId, number, photo: stored };
}

const erase = (number: string, over: Partial<Parameters<typeof erasePerson>[0]> = {}) =>
  erasePerson({ number, isCoverConfirmed: true, actor: OWNER, now: on('2027-01-10'), ...over });

/** Every row of every table that holds personal data, but for invoices, which keep it by law. */
async function everything(): Promise<string> {
  const tables = await Promise.all([
    db.customer.findMany(),
    db.job.findMany({ include: { events: true, claim: true, certificates: true, accessories: true } }),
    db.message.findMany(),
    db.photo.findMany(),
    db.privateLink.findMany(),
    db.bookingDraft.findMany(),
    db.mail.findMany(),
    db.quoteRequest.findMany(),
    db.seenBy.findMany(),
    db.attempt.findMany(),
  ]);
  return JSON.stringify(tables);
}

describe('finding a person', () => {
  it('gathers what was written under one address, however it was typed', async () => {
    const world = await makeWorkshop(NOW);
    const first = await makeBooking({ repairId: world.repairId, now: NOW });
    await makeBooking({ repairId: world.repairId, now: NOW });
    await db.customer.updateMany({
      where: { jobs: { some: { id: first.jobId } } },
      data: { email: 'Maren.Holt@Example.org' },
    });
    // In the LIKE of SQL this _ would stand for any letter.
    await db.customer.create({
      data: { ...personRow(), email: 'maren_holt@example.org', createdAt: NOW },
    });
    const { people, total } = await findPeople({ q: 'HOLT', page: 1 });
    expect(total).toBe(1);
    expect(people).toMatchObject([
      { email: 'maren.holt@example.org', name: 'Maren Holt', jobs: 2, quotes: 0 },
    ]);
    expect((await findPerson(first.number))?.customerIds).toHaveLength(2);
    expect((await findPeople({ q: 'nobody', page: 1 })).people).toEqual([]);
    expect((await findPeople({ q: '%', page: 1 })).people).toEqual([]);
  });

  it('is by telephone, town and postcode too, and counts what they wrote under another of each', async () => {
    const world = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId: world.repairId, now: NOW });
    await makeBooking({ repairId: world.repairId, now: NOW });
    await db.customer.updateMany({
      where: { jobs: { some: { id: jobId } } },
      data: { phone: '020 7946 0123', town: 'Tern Haven', postcode: 'QX9 4ZZ' },
    });
    await makeRequest({ now: NOW });
    for (const q of ['+44 20 7946 0123', 'tern haven', 'qx94zz']) {
      expect((await findPeople({ q, page: 1 })).people).toMatchObject([{ name: 'Maren Holt', jobs: 2 }]);
    }
    const asked = await findPeople({ q: '07700 900412', page: 1 });
    expect(asked.people).toMatchObject([{ name: 'Ines Farrow', jobs: 0, quotes: 1 }]);
    // The device that somebody asked about is nobody's name.
    expect((await findPeople({ q: 'Tideline', page: 1 })).people).toEqual([]);
  });
});

describe('the list of people', () => {
  it('shows its last page for every page past it', async () => {
    const world = await makeWorkshop(NOW);
    const { jobId } = await makeBooking({ repairId: world.repairId, now: NOW });
    const { id: _, ...copy } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
    for (let other = 0; other < 25; other += 1) {
      const email = `person${other}@example.org`;
      const { id: customerId } = await db.customer.create({
        data: { ...personRow(), email, createdAt: NOW },
      });
      await db.job.create({ data: { ...copy, customerId, number: `J-${other}` } });
    }
    const [first, second, ninth] = await Promise.all([1, 2, 9].map((page) => findPeople({ q: '', page })));
    expect(first?.people).toHaveLength(25);
    expect(second).toMatchObject({ total: 26, page: 2 });
    expect(second?.people).toHaveLength(1);
    expect(ninth).toEqual(second);
    expect(await findPeople({ q: 'nobody', page: 9 })).toEqual({ people: [], total: 0, page: 1 });
  });
});

function personRow() {
  const { name, phone, postcode, town, country } = ADDRESS;
  return { name, phone, postcode, town, country, addressLines: [] };
}

describe('a copy of somebody’s data', () => {
  it('holds the job, its words, photo, certificate and invoice, and is kept in the log', async () => {
    const { number } = await finished();
    const { bytes } = await exportPerson({ number, actor: OWNER, now: NOW, paperOf: invoiceFile });
    // Read back by a ZIP reader; its names, and the data by JSON.
    const files = unzipSync(bytes);
    const shown = `J-${number.slice(1, 5)}-${number.slice(5)}`;
    const names = Object.keys(files);
    expect(names).toContain('read-me.txt');
    expect(names).toContain(`jobs/${shown}/photo-01-arrival.jpg`);
    expect(names.some((name) => name.startsWith(`jobs/${shown}/certificate-`))).toBe(true);
    expect(names.some((name) => name.startsWith('invoices/'))).toBe(true);
    const data = JSON.parse(new TextDecoder().decode(files['data.json']));
    expect(data.contacts[0]).toMatchObject({
      name: ADDRESS.name,
      email: ADDRESS.email,
      phone: ADDRESS.phone,
    });
    expect(data.jobs[0].messages[0].text).toBe('It stood in the rain.');
    expect(data.jobs[0].payments[0]).toMatchObject({ amountMinor: 7200, currency: 'GBP' });
    expect(data.jobs[0].mails.length).toBeGreaterThan(3);
    expect(data.missing).toEqual([]);
    const jpeg = files[`jobs/${shown}/photo-01-arrival.jpg`];
    expect((await sharp(Buffer.from(jpeg ?? [])).metadata()).format).toBe('jpeg');
    expect(await listSeen({ email: ADDRESS.email, jobIds: [], quoteIds: [], take: 9 })).toMatchObject([
      { userId: OWNER.id, what: 'exported' },
    ]);
  });

  it('holds nothing of anybody else, and is handed out by the owner only', async () => {
    const { world, number } = await finished();
    const other = await makeBooking({ repairId: world.repairId, now: NOW });
    await db.customer.updateMany({
      where: { jobs: { some: { id: other.jobId } } },
      data: { email: 'ines@example.org', name: 'Ines Farrow' },
    });
    const { bytes } = await exportPerson({ number, actor: OWNER, now: NOW, paperOf: invoiceFile });
    const data = new TextDecoder().decode(unzipSync(bytes)['data.json']);
    expect(data).not.toContain('Ines');
    expect(data).not.toContain(other.number);
    // No names of staff, and no way into the job.
    expect(data).not.toContain('Nils Pier');
    expect(data).not.toMatch(/nonce|tokenHash|userId/);
    await expect(
      exportPerson({ number, actor: BENCH, now: NOW, paperOf: invoiceFile }),
    ).rejects.toMatchObject({ code: 'not-allowed' });
  });
});

describe('removing somebody’s data', () => {
  it('waits while their parcel is looked for, for the owner as for the clock', async () => {
    const { number, jobId } = await finished();
    const seek = { jobId, note: 'Last seen in Sandmouth.', actor: BENCH, now: on('2026-12-22') };
    await seekParcel({ ...seek, version: await versionOf(jobId) });
    await expect(erase(number)).rejects.toMatchObject({ code: 'conflict', message: /looked for/ });
    expect(await sweepPeople(on('2027-12-03'))).toBe(0);
    const ended = { ...seek, how: 'lost', note: 'We repair another one for you.' } as const;
    await endSearch({ ...ended, version: await versionOf(jobId) });
    expect(await erase(number)).toMatchObject({ bookings: 1 });
  });

  it('takes out name, address, words, photos and files, and leaves the books and the proof', async () => {
    const { number, jobId, photo } = await finished();
    const before = await everything();
    for (const each of PERSONAL) expect(before).toContain(each);
    expect(await hasFile(photo.fileKey)).toBe(true);
    const token = await newestTokenOf(jobId);

    expect(await erase(number)).toMatchObject({ bookings: 1, messages: 1, photos: 1 });

    const after = await everything();
    for (const each of PERSONAL) expect(after).not.toContain(each);
    expect(await hasFile(photo.fileKey)).toBe(false);
    expect(await hasFile(photo.thumbKey)).toBe(false);
    expect(token && (await findJobByToken(token))).toBeNull();

    const [invoice] = await db.invoice.findMany({ include: { lines: true } });
    expect(invoice).toMatchObject({ payableMinor: 7200, buyer: { name: ADDRESS.name } });
    const job = await db.job.findUniqueOrThrow({
      where: { id: jobId },
      include: {
        certificates: true,
        work: true,
        checkEntries: true,
        customer: true,
        events: { orderBy: { version: 'asc' } },
      },
    });
    expect(job.certificates).toHaveLength(1);
    expect(job.work).toHaveLength(1);
    expect(job.checkEntries).toHaveLength(2);
    expect(job.customer).toMatchObject({ name: 'Data removed', erasedAt: on('2027-01-10') });
    expect(job.events.at(-1)).toMatchObject({ kind: 'data-removed', actorKind: 'owner', actorId: OWNER.id });
    // The log still says on the job who removed it, with no address left to look under.
    expect(await listSeen({ email: '', jobIds: [jobId], quoteIds: [], take: 9 })).toMatchObject([
      { what: 'erased', userId: OWNER.id, number },
    ]);
  });

  it('a second time changes nothing', async () => {
    const { number } = await finished();
    await erase(number);
    const once = await everything();
    expect(await erase(number, { now: on('2027-02-01') })).toEqual({
      bookings: 0,
      requests: 0,
      messages: 0,
      photos: 0,
      mails: 0,
    });
    expect(await everything()).toBe(once);
  });

  it('is refused while a job is open, and for live cover until the owner confirms', async () => {
    const { world, number } = await finished();
    const open = await makeBooking({ repairId: world.repairId, now: NOW });
    await expect(erase(number)).rejects.toMatchObject({ code: 'conflict' });
    await db.job.update({ where: { id: open.jobId }, data: { stage: 'cancelled' } });
    await expect(erase(number, { isCoverConfirmed: false })).rejects.toMatchObject({ field: 'cover' });
    await expect(erase(number, { actor: BENCH })).rejects.toMatchObject({ code: 'not-allowed' });
    // P12M from 2026-11-25 ends on 2027-11-25, a Thursday; 7 days of grace end on 2027-12-02.
    await expect(erase(number, { isCoverConfirmed: false, now: on('2027-12-02') })).rejects.toMatchObject({
      field: 'cover',
    });
    expect(await erase(number, { isCoverConfirmed: false, now: on('2027-12-03') })).toMatchObject({
      bookings: 2,
    });
  });
});

describe('afterwards', () => {
  it('nobody can be written to, and no new way in is made', async () => {
    const { number, jobId } = await finished();
    await erase(number);
    const call = { jobId, actor: BENCH, now: on('2027-01-11') };
    await expect(sendMessage({ ...call, text: 'Hello?' })).rejects.toMatchObject({ code: 'conflict' });
    await expect(renewLink({ ...call, version: await versionOf(jobId) })).rejects.toMatchObject({
      code: 'conflict',
    });
    expect(await db.privateLink.count()).toBe(0);
  });
});

describe('the clock', () => {
  it('removes a booking so many months after its job was closed, never while its cover lives', async () => {
    const { jobId } = await finished();
    await db.workshop.update({ where: { id: 1 }, data: { keepMonths: 6 } });
    // Closed on 2026-12-20; six months are over on 2027-06-20, cover with grace on 2027-12-02.
    expect(await sweepPeople(on('2027-06-21'))).toBe(0);
    expect(await sweepPeople(on('2027-12-02'))).toBe(0);
    expect(await sweepPeople(on('2027-12-03'))).toBe(1);
    expect(await sweepPeople(on('2027-12-03'))).toBe(0);
    const job = await db.job.findUniqueOrThrow({ where: { id: jobId }, include: { customer: true } });
    expect(job.customer.name).toBe('Data removed');
  });

  it('keeps the time the workshop set, and all of it where it set none', async () => {
    await finished();
    expect(await sweepPeople(on('2033-12-19'))).toBe(0);
    await db.workshop.update({ where: { id: 1 }, data: { keepMonths: 0 } });
    expect(await sweepPeople(on('2099-01-01'))).toBe(0);
    await db.workshop.update({ where: { id: 1 }, data: { keepMonths: 84 } });
    expect(await sweepPeople(on('2033-12-21'))).toBe(1);
  });
});

describe('the log of who saw what', () => {
  it('holds one row for each member of staff, job and hour', async () => {
    const { jobId } = await finished();
    const seen = { userId: BENCH.id, what: 'opened', email: ADDRESS.email, jobId } as const;
    await noteSeen({ ...seen, now: new Date('2027-01-10T10:01:00Z') });
    await noteSeen({ ...seen, now: new Date('2027-01-10T10:59:00Z') });
    await noteSeen({ ...seen, userId: OWNER.id, now: new Date('2027-01-10T10:59:00Z') });
    await noteSeen({ ...seen, now: new Date('2027-01-10T11:00:00Z') });
    const rows = await listSeen({ email: ADDRESS.email, jobIds: [jobId], quoteIds: [], take: 9 });
    expect(rows.map((row) => row.userId)).toEqual([BENCH.id, OWNER.id, BENCH.id]);
  });

  it('knows a person by a keyed hash that is the same however the address is typed', () => {
    expect(subjectOf(' Maren.Holt@Example.org')).toBe(subjectOf(ADDRESS.email));
    expect(subjectOf(ADDRESS.email)).toMatch(/^[0-9a-f]{32}$/);
    expect(subjectOf('')).toBe('');
  });
});
describe('requests for a price that came to nothing', () => {
  it('are not those whose price was accepted: it stands until it is booked or ended', async () => {
    const world = await makeWorkshop(NOW);
    const { quoteId } = await makeRequest({ now: NOW });
    await makeQuote({ quoteId, repairId: world.repairId, now: NOW });
    await decideQuote({ quoteId, revision: 1, decision: 'accepted', now: NOW });
    expect(await sweepPeople(on('2028-07-06'))).toBe(0);
    expect(await db.quoteRevision.count({ where: { quoteId, state: 'accepted' } })).toBe(1);
  });

  it('are removed half a year after the last thing that happened, and not while they wait on us', async () => {
    const world = await makeWorkshop(NOW);
    const asked = await makeRequest({ now: NOW });
    const lapsed = await makeRequest({
      now: NOW,
      answers: { email: 'tom.weir@example.org', name: 'Tom Weir', device: 'Marram Two' },
    });
    await makeQuote({ quoteId: lapsed.quoteId, repairId: world.repairId, now: NOW });
    // The price holds for 30 days, so the clock lets it lapse at the end of December.
    await clockRound(on('2027-01-05'));
    expect((await db.quoteRequest.findUniqueOrThrow({ where: { quoteId: lapsed.quoteId } })).state).toBe(
      'lapsed',
    );
    expect(await sweepPeople(on('2027-07-04'))).toBe(0);
    expect(await sweepPeople(on('2027-07-06'))).toBe(1);
    expect(await everything()).not.toContain('Weir');
    expect(await everything()).not.toContain('tom.weir');
    expect(await everything()).toContain(ASKED.email);
    expect(await sweepPeople(on('2028-07-06'))).toBe(0);
    expect((await findPerson(asked.number))?.email).toBe(ASKED.email);
    expect((await findPerson(lapsed.number))?.email).toBe('');
  });
});
