import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, it } from 'vitest';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { day } from '@/lib/calendar/day';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { addPhotos } from '@/lib/jobs/add-photo';
import { expectedParcels, findArrival } from '@/lib/jobs/find-arrival';
import { findJobByToken, newestTokenOf } from '@/lib/jobs/private-link';
import { recordFinding } from '@/lib/jobs/record-finding';
import { recordPayment } from '@/lib/jobs/record-payment';
import { readStatus } from '@/lib/jobs/records';
import { eventLine } from '@/lib/jobs/rules/events';
import { bookingOf, openedFirst, takenInAt } from '@/lib/jobs/rules/of-booking';
import { isOneAddress } from '@/lib/jobs/rules/one-address';
import { sendMessage } from '@/lib/jobs/send-message';
import { takeInOpened } from '@/lib/jobs/take-in-opened';
import { undoArrival } from '@/lib/jobs/undo-arrival';
import { walkIn } from '@/lib/jobs/walk-in';
import { correctContact } from '@/lib/keeping/correct-contact';
import { drawMail } from '@/lib/mail/draw';
import { showNumber } from '@/lib/numbers/job-number';
import { useDatabase } from '@/tests/database';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { jobNow, moveTo, somePhoto } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const BOOKED = new Date('2026-11-20T09:00:00Z');
const CAME = new Date('2026-11-25T09:00:00Z');
const NOW = new Date('2026-11-26T09:00:00Z');

let world: Awaited<ReturnType<typeof makeWorkshop>>;

beforeAll(async () => {
  world = await makeWorkshop(BOOKED);
}, 60_000);

const booked = (serial: string) => makeBooking({ repairId: world.repairId, now: BOOKED, serial });

async function opened(serial: string, email = ADDRESS.email.toUpperCase()) {
  const { number } = await walkIn({
    customer: { ...ADDRESS, email },
    repairId: world.repairId,
    serial,
    problem: 'No letter',
    extra: ['power supply', 'Strap'],
    batteryAnswer: 'healthy',
    photos: [somePhoto()],
    isOtherMatter: false,
    formKey: randomUUID(),
    actor: BENCH,
    now: CAME,
  });
  return jobNow((await db.job.findUniqueOrThrow({ where: { number }, select: { id: true } })).id);
}

async function takeIn(bookingId: string, openedId: string, o: { serial?: string; version?: number } = {}) {
  const booking = await jobNow(bookingId);
  return takeInOpened({
    jobId: bookingId,
    version: booking.version,
    opened: { jobId: openedId, version: o.version ?? (await jobNow(openedId)).version },
    serial: o.serial ?? booking.serialTyped,
    arrived: ['Power supply'],
    extra: ['Strap'],
    photos: [somePhoto()],
    actor: BENCH,
    now: NOW,
  });
}

let serials = 0;

const halfStates = () =>
  onServer(process.env['DATABASE_URL'] ?? '', (client) => findHalfStates((sql) => client.query(sql)));

async function arrivalMail(jobId: string): Promise<string> {
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'unit-arrived' } });
  return (await drawMail(mail)).text.replace(/\s+/g, ' ');
}

describe('a parcel for which a job was opened beside its booking', () => {
  it('is taken in under the booking, with the photos and the day it came, and the job opened first ends', async () => {
    const { jobId, number } = await booked('HW2-90001-A');
    const first = await opened('HW2-90001-B');
    await sendMessage({ jobId: first.id, text: 'I had booked it.', actor: { kind: 'customer' }, now: CAME });
    await takeIn(jobId, first.id, { serial: 'HW2-90001-A' });

    const booking = await jobNow(jobId);
    expect(booking).toMatchObject({
      stage: 'arrived',
      arrivedAt: CAME,
      arrivedSerial: 'HW2-90001-A',
      isSerialSettled: true,
      promisedOn: expect.any(Date),
    });
    expect(booking.photos).toHaveLength(2);
    expect(booking.messages).toMatchObject([{ text: 'I had booked it.' }]);
    expect(booking.accessories).toMatchObject([
      { name: 'Power supply', isTold: true, isArrived: true },
      { name: 'Strap', isTold: false, isArrived: true },
    ]);
    const arrived = booking.events.at(-1);
    expect(arrived).toMatchObject({ kind: 'unit-arrived', at: NOW, actorId: BENCH.id });
    expect(takenInAt(booking.events)).toEqual(NOW);
    expect(eventLine('unit-arrived', arrived?.data)).toBe(
      `Taken in; serial matches; Strap came with it and is kept with the unit; opened first as ${showNumber(first.number)}`,
    );

    const ended = await jobNow(first.id);
    expect(ended).toMatchObject({ stage: 'cancelled', photos: [], messages: [] });
    expect(bookingOf(ended.events)).toBe(number);
    expect(bookingOf(booking.events)).toBeNull();
    const status = await readStatus(first.number);
    const zone = { locale: 'en-GB', timeZone: 'UTC' };
    // Nothing was cancelled in the eyes of whoever looks the number up.
    expect(status && stampSteps(status, zone)).toMatchObject([
      { key: 'booked', state: 'done' },
      { key: 'arrived', state: 'done' },
    ]);
    const last = ended.events.at(-1);
    expect(last).toMatchObject({ kind: 'is-of-booking', fromStage: 'arrived', toStage: 'cancelled' });
    expect(eventLine('is-of-booking', last?.data)).toBe(
      `The parcel of a booking, ${showNumber(number)}: taken in there`,
    );
  });

  it('tells its customer once, that what they were told first is not so', async () => {
    const { jobId } = await booked('HW2-90002-A');
    const first = await opened('HW2-90002-B');
    await db.mail.updateMany({ where: { jobId: first.id }, data: { state: 'sent', sentAt: CAME } });
    await takeIn(jobId, first.id);
    const text = await arrivalMail(jobId);
    expect(text).toContain('We first wrote to you that your parcel came without a booking.');
    expect(text).toContain('We promise it ready to go back by');
    expect(await db.mail.count({ where: { jobId: first.id } })).toBe(1);
  });

  it.each([
    ['waits', { state: 'queued' }, false],
    ['was given up', { state: 'failed' }, false],
    ['is kept for want of a mail server', { state: 'kept' }, false],
    ['came back', { state: 'sent', bouncedAt: CAME }, false],
    [
      'went to an address that was put right since',
      { state: 'sent', toAddress: 'm.holt@example.org' },
      false,
    ],
    ['is leaving', { state: 'sending' }, true],
    ['came back, and they were told by telephone', { state: 'sent', bouncedAt: CAME, toldAt: CAME }, true],
  ])('where the first message %s', async (_, mail, isTold) => {
    serials += 1;
    const { jobId } = await booked(`HW2-9003${serials}-A`);
    const first = await opened(`HW2-9003${serials}-B`);
    await db.mail.updateMany({ where: { jobId: first.id }, data: mail });
    await takeIn(jobId, first.id);
    const text = await arrivalMail(jobId);
    expect(text.includes('We first wrote to you')).toBe(isTold);
    // Nothing that waits says afterwards that it came without a booking.
    const left = await db.mail.findMany({ where: { jobId: first.id, toldAt: null } });
    expect(left.every(({ state, bouncedAt }) => state === 'sent' && bouncedAt === null)).toBe(true);
    expect(await halfStates()).toEqual([]);
  });

  it('sends the messages of the opened job that have not left as those of the booking', async () => {
    const { jobId } = await booked('HW2-90006-A');
    const first = await opened('HW2-90006-B');
    await sendMessage({ jobId: first.id, text: 'Is the strap yours?', actor: BENCH, now: CAME });
    await takeIn(jobId, first.id);
    expect(await db.mail.count({ where: { jobId: first.id } })).toBe(0);
    const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'message-from-workshop' } });
    expect((await drawMail(mail)).text).toContain('Is the strap yours?');
  });

  it('opens the booking by the link of the first message', async () => {
    const { jobId } = await booked('HW2-90003-A');
    const first = await opened('HW2-90003-B');
    const token = (await newestTokenOf(first.id)) ?? '';
    await takeIn(jobId, first.id);
    expect(await findJobByToken(token)).toMatchObject({ jobId });
  });

  it('keeps another serial for a person to settle, by the photo of it that was taken first', async () => {
    const { jobId } = await booked('HW2-90004-A');
    const first = await opened('XR9-11111-B');
    const { id } = first;
    await addPhotos({ jobId: id, purpose: 'serial', photos: [somePhoto()], actor: BENCH, now: CAME });
    await takeIn(jobId, id, { serial: 'XR9-11111-B' });
    const booking = await jobNow(jobId);
    expect(booking).toMatchObject({ serialComparison: 'different', isSerialSettled: false });
    expect(booking.photos.map(({ purpose }) => purpose).toSorted()).toEqual(['arrival', 'arrival', 'serial']);
  });

  it('is not here after all as any other, with all of its photos', async () => {
    const { jobId, number } = await booked('HW2-90005-A');
    const first = await opened('HW2-90005-B');
    await takeIn(jobId, first.id);
    const { version, events } = await jobNow(jobId);
    expect(openedFirst(events)).toBe(first.number);
    await undoArrival({ jobId, version, reason: 'It was another one.', actor: BENCH, now: NOW });
    expect(await jobNow(jobId)).toMatchObject({ stage: 'booked', photos: [] });
    expect(await findArrival('HW2-90005-A', await expectedParcels(NOW))).toMatchObject({ job: { number } });
  });
});

describe('is refused, and nothing is changed', () => {
  const refused = async (
    serial: string,
    before: (id: string) => Promise<unknown>,
    expected: { code: string; message: unknown },
  ) => {
    const { jobId } = await booked(`${serial}-A`);
    const { id } = await opened(`${serial}-B`);
    await before(id);
    const stage = (await jobNow(id)).stage;
    await expect(takeIn(jobId, id)).rejects.toMatchObject(expected);
    expect((await jobNow(jobId)).stage).toBe('booked');
    expect((await jobNow(id)).stage).toBe(stage);
    expect((await jobNow(id)).photos).toHaveLength(1);
  };

  it('once something was found', async () => {
    await refused(
      'HW2-90011',
      async (jobId) => {
        await moveTo(jobId, 'assess', CAME);
        await recordFinding({ jobId, text: 'The socket is torn.', photos: [], actor: BENCH, now: CAME });
      },
      { code: 'invalid', message: expect.stringContaining('take that back first') },
    );
  });

  it('once money came', async () => {
    await refused(
      'HW2-90012',
      (jobId) =>
        recordPayment({
          jobId,
          amount: 2000,
          method: 'cash',
          reference: '',
          receivedOn: day('2026-11-25'),
          actor: BENCH,
          now: CAME,
        }),
      { code: 'invalid', message: expect.stringContaining('Money is recorded') },
    );
  });

  it('under a booking of another address, until that is put right', async () => {
    const { jobId } = await booked('HW2-90015-A');
    const { id } = await opened('HW2-90015-B', 'perran.veale@example.org');
    await sendMessage({ jobId: id, text: 'Is it there?', actor: { kind: 'customer' }, now: CAME });
    const token = (await newestTokenOf(id)) ?? '';
    await expect(takeIn(jobId, id)).rejects.toMatchObject({
      code: 'invalid',
      message: expect.stringContaining('“Correct the contact” first'),
    });
    expect(await jobNow(jobId)).toMatchObject({ stage: 'booked', photos: [], messages: [] });
    const kept = await jobNow(id);
    expect(kept).toMatchObject({ stage: 'arrived', messages: [{ text: 'Is it there?' }] });
    expect(kept.photos).toHaveLength(1);
    expect(await findJobByToken(token)).toMatchObject({ jobId: id });

    const { version } = kept;
    await correctContact({ jobId: id, version, contact: ADDRESS, newLink: true, actor: BENCH, now: NOW });
    await takeIn(jobId, id);
    expect(await jobNow(jobId)).toMatchObject({ stage: 'arrived', messages: [{ text: 'Is it there?' }] });
    expect(await findJobByToken(token)).toBeNull();
    expect(await findJobByToken((await newestTokenOf(jobId)) ?? '')).toMatchObject({ jobId });
  });

  it('of a job that was booked itself', async () => {
    const { jobId } = await booked('HW2-90013-A');
    const other = await booked('HW2-90013-B');
    await expect(takeIn(jobId, other.jobId)).rejects.toMatchObject({ code: 'conflict' });
  });

  it('under a booking whose parcel is here, or that was changed meanwhile, or from an old page', async () => {
    const { jobId } = await booked('HW2-90014-A');
    const first = await opened('HW2-90014-B');
    const second = await opened('HW2-90014-C');
    await expect(takeIn(jobId, first.id, { version: first.version - 1 })).rejects.toMatchObject({
      code: 'conflict',
    });
    await takeIn(jobId, first.id);
    await expect(takeIn(jobId, second.id)).rejects.toMatchObject({ code: 'conflict' });
    await expect(takeIn(jobId, first.id)).rejects.toMatchObject({ code: 'conflict' });
    expect((await jobNow(second.id)).stage).toBe('arrived');
  });
});

it('takes two addresses for one whatever their capitals, and a removed one for nobody’s', () => {
  expect(isOneAddress('', '')).toBe(false);
  expect(isOneAddress('Perran_Veale@Example.org', 'perran_veale@example.org')).toBe(true);
  expect(isOneAddress('perran_veale@example.org', 'perran.veale@example.org')).toBe(false);
});
