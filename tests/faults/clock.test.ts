import { beforeAll, expect, test, vi } from 'vitest';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { clockRound } from '@/lib/jobs/clock-round';
import { recordPayment } from '@/lib/jobs/record-payment';
import { recoverMail } from '@/lib/mail/recover';
import { useDatabase } from '@/tests/database';
import { proved, sendBack, takeIn, takeMove } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();
// Each test brings a job all the way, on machines that may be busy.
vi.setConfig({ testTimeout: 60_000 });
let world: Awaited<ReturnType<typeof makeWorkshop>>;
beforeAll(async () => {
  world = await makeWorkshop(new Date('2026-10-01T09:00:00Z'));
}, 60_000);

/** A job booked, repaired and sent back, each part at its own reading of the clock. */
async function course(at: readonly [booked: string, arrived: string, finished: string, sent: string]) {
  const [booked, arrived, finished, sent] = at.map((text) => new Date(text));
  if (!booked || !arrived || !finished || !sent) throw new Error('four instants are needed');
  const { jobId } = await makeBooking({ repairId: world.repairId, now: booked });
  await takeIn(jobId, arrived);
  await takeMove(jobId, 'start-bench', finished);
  await proved(world, jobId, finished);
  await recordPayment({
    jobId,
    amount: 7200,
    method: 'card',
    reference: '',
    receivedOn: dayInZone(sent, 'Europe/London'),
    actor: BENCH,
    now: sent,
  });
  await sendBack(jobId, sent);
  return db.job.findUniqueOrThrow({
    where: { id: jobId },
    include: { certificates: true, invoices: true, events: { orderBy: { version: 'asc' } } },
  });
}

async function expectWhole(): Promise<void> {
  const url = process.env['DATABASE_URL'] ?? '';
  expect(await onServer(url, (client) => findHalfStates((sql) => client.query(sql)))).toEqual([]);
}

// BST ends on 25 October 2026 and begins on 28 March 2027, at 01:00 UTC (IANA time zone database, Europe/London).
test.for([
  [
    'ahead by a day and back',
    '2026-11-10T10:00:00Z',
    '2026-11-11T10:00:00Z',
    '2026-11-10T11:00:00Z',
    '2026-11-10T12:00:00Z',
  ],
  [
    'back by a day from booking to arrival',
    '2026-11-10T10:00:00Z',
    '2026-11-09T10:00:00Z',
    '2026-11-09T11:00:00Z',
    '2026-11-09T12:00:00Z',
  ],
  [
    'through the end of summer time',
    '2026-10-25T00:30:00Z',
    '2026-10-25T01:30:00Z',
    '2026-10-25T00:45:00Z',
    '2026-10-25T02:00:00Z',
  ],
  [
    'through the beginning of summer time',
    '2027-03-28T00:30:00Z',
    '2027-03-28T01:30:00Z',
    '2027-03-28T00:45:00Z',
    '2027-03-28T02:00:00Z',
  ],
  [
    'over the new year and back',
    '2026-12-31T10:00:00Z',
    '2027-01-01T10:00:00Z',
    '2027-01-01T11:00:00Z',
    '2026-12-31T12:00:00Z',
  ],
  [
    'on in the old year after it was in the new',
    '2026-12-31T13:00:00Z',
    '2026-12-31T13:00:00Z',
    '2026-12-31T14:00:00Z',
    '2026-12-31T14:00:00Z',
  ],
] as const)(
  'a clock that goes %s leaves numbers, promises and papers sane',
  async ([, booked, arrived, finished, sent]) => {
    const job = await course([booked, arrived, finished, sent]);
    expect(job.stage).toBe('sent-back');
    expect(job.events.map(({ version }) => version)).toEqual(job.events.map((_, i) => i + 1));
    expect(job.promisedOn && dayFromDate(job.promisedOn) >= arrived.slice(0, 10)).toBe(true);
    expect(job.invoices.map(({ year }) => year)).toEqual([Number(finished.slice(0, 4))]);
    expect(job.certificates.map(({ issuedOn }) => dayFromDate(issuedOn))).toEqual([sent.slice(0, 10)]);
    expect(job.certificates.every(({ issuedOn, endsOn }) => endsOn > issuedOn)).toBe(true);
    await expectWhole();
  },
);

test('a round of the clock and a look for lost mail, a day too early and a day too late, break nothing', async () => {
  const before = await db.mail.count({ where: { state: 'queued' } });
  expect(before).toBeGreaterThan(0);
  for (const at of ['2026-11-30T10:00:00Z', '2026-11-29T10:00:00Z', '2026-12-01T10:00:00Z']) {
    await clockRound(new Date(at));
    expect(await recoverMail(new Date(at))).toBe(0);
  }
  expect(await db.mail.count({ where: { state: 'queued' } })).toBeGreaterThanOrEqual(before);
  await expectWhole();
});
