import { beforeEach, describe, expect, it } from 'vitest';
import { readOrderList } from '@/lib/bench/order-records';
import { db } from '@/lib/db/client';
import { clockRound } from '@/lib/jobs/clock-round';
import { byComing, expectedParcels, findArrival } from '@/lib/jobs/find-arrival';
import { moveJob } from '@/lib/jobs/move';
import { nameParcel } from '@/lib/jobs/name-parcel';
import { remindOfParcels } from '@/lib/jobs/remind-parcels';
import { readToday } from '@/lib/jobs/today';
import { drawMail } from '@/lib/mail/draw';
import { forgetCalendars } from '@/lib/workshop/records';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate, makeClaim } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';
import { madeOnce } from '@/tests/world/made-once';

useDatabase();

const BOOKED = new Date('2027-03-03T10:00:00Z');
const after = (days: number) => new Date(BOOKED.getTime() + days * 86_400_000);

let jobId = '';
let number = '';
let world: Awaited<ReturnType<typeof makeWorkshop>>;
const begin = madeOnce(async () => {
  const world = await makeWorkshop(BOOKED);
  const { jobId, number } = await makeBooking({ repairId: world.repairId, now: BOOKED });
  return { world, jobId, number };
});
beforeEach(async () => {
  ({ world, jobId, number } = await begin());
}, 60_000);

const letters = () =>
  db.mail.findMany({ where: { template: 'parcel-awaited' }, orderBy: { queuedAt: 'asc' } });
const events = async () => (await jobNow(jobId)).events.filter(({ kind }) => kind === 'parcel-reminded');
async function text(): Promise<string> {
  const mail = (await letters()).at(-1);
  if (!mail) throw new Error('no letter was queued');
  return (await drawMail(mail)).text.replace(/\s+/g, ' ');
}

describe('a customer whose parcel has not come', () => {
  it('is reminded once, by the clock, with the day until which it is kept', async () => {
    expect((await clockRound(after(13))).parcelsReminded).toBe(0);
    expect((await clockRound(after(14))).parcelsReminded).toBe(1);
    expect((await clockRound(after(15))).parcelsReminded).toBe(0);
    expect(await events()).toMatchObject([{ actorKind: 'clock', data: {} }]);
    expect((await letters()).map(({ data, jobId }) => ({ data, jobId }))).toEqual([
      { data: { keptUntil: '2027-04-17' }, jobId },
    ]);
    expect(await text()).toContain('We keep your booking open until Saturday 17 April 2027');
    expect(await text()).toContain(
      'If you give us the number of your parcel, we keep your booking open for longer, and write once more',
    );
  });

  it('is told to ask the carrier once they named it, and reminded anew after that', async () => {
    await remindOfParcels(after(14));
    await nameParcel({ jobId, reference: 'HP-IN-9041', now: after(16) });
    expect(await remindOfParcels(after(29))).toBe(0);
    expect(await remindOfParcels(after(30))).toBe(1);
    expect((await letters()).at(-1)?.data).toEqual({ keptUntil: '2027-05-03', isNamed: true });
    expect(await text()).toContain('ask your carrier where the parcel is');
    // A number that is put right begins a new wait, so neither letter may say that it is the last.
    for (const letter of await letters())
      expect((await drawMail(letter)).text).not.toContain('remind you again');
  });

  it('is told when nobody is here, as on the job page, from a fortnight before', async () => {
    const closed = ['2027-03-22', '2027-03-23', '2027-03-24', '2027-03-25'];
    await db.closingDay.createMany({
      data: closed.map((each) => ({ day: new Date(each), name: 'Moving the bench' })),
    });
    forgetCalendars();
    try {
      expect(await remindOfParcels(after(14))).toBe(1);
    } finally {
      forgetCalendars();
    }
    // Friday 26 March 2027 is Good Friday and the 29th Easter Monday [computed]: somebody is here again on the 30th.
    expect(await text()).toContain(
      'From Monday 22 March 2027 to Thursday 25 March 2027 nobody is here. A parcel that comes then is taken in on Tuesday 30 March 2027.',
    );
  });

  it('is left alone where the workshop wants no reminders, and where the unit must not be posted', async () => {
    await db.workshop.update({ where: { id: 1 }, data: { parcelRemindDays: 0 } });
    expect(await remindOfParcels(after(20))).toBe(0);
    await db.workshop.update({ where: { id: 1 }, data: { parcelRemindDays: 14 } });
    await db.job.update({ where: { id: jobId }, data: { batteryAnswer: 'swollen' } });
    expect(await remindOfParcels(after(20))).toBe(0);
    expect(await letters()).toEqual([]);
  });

  it('is left alone once the booking was cancelled, and years later', async () => {
    expect(await remindOfParcels(after(400))).toBe(0);
    const { version } = await jobNow(jobId);
    await moveJob({ jobId, version, move: 'cancel', note: '', actor: { kind: 'customer' }, now: after(2) });
    expect(await remindOfParcels(after(14))).toBe(0);
  });

  it('is told of the claim where it is one', async () => {
    const certificate = await makeCertificate(world, BOOKED, 'HW2-77001-A');
    await makeClaim({ number: certificate.number, serial: 'HW2-77001-A', now: BOOKED });
    expect(await remindOfParcels(after(14))).toBe(2);
    const claim = await db.job.findFirstOrThrow({ where: { kind: 'claim' }, select: { id: true } });
    const mail = await db.mail.findFirstOrThrow({ where: { jobId: claim.id, template: 'parcel-awaited' } });
    expect((await drawMail(mail)).text.replace(/\s+/g, ' ')).toContain('We keep your claim open until');
  });
});

describe('a parcel that does not come', () => {
  it('stands apart from those that may, and is still found when it comes', async () => {
    const today = async (days: number) => {
      const { expected, notCome } = await readToday(after(days));
      return [expected.map((each) => each.number), notCome.map((each) => each.number)];
    };
    expect(await today(45)).toEqual([[number], []]);
    expect(await today(46)).toEqual([[], [number]]);
    const parcels = await expectedParcels(after(46));
    expect(byComing(parcels).notCome).toMatchObject([{ number, wait: { days: 46, isReminded: false } }]);
    expect(await findArrival((await jobNow(jobId)).serialTyped, parcels)).toMatchObject({ state: 'found' });
  });

  it('orders no parts any more', async () => {
    const { partId } = await db.lot.findUniqueOrThrow({ where: { id: world.lotId } });
    await db.repairPart.create({ data: { repairId: world.repairId, partId, quantity: 50 } });
    expect(await readOrderList(after(45))).toMatchObject({ jobs: 1, rows: [{ needed: 50 }] });
    expect((await readOrderList(after(46))).jobs).toBe(0);
  });
});
