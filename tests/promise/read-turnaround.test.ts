import { beforeEach, expect, test } from 'vitest';
import { day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { readTurnaround } from '@/lib/promise/read-turnaround';
import { readBenchJobs } from '@/lib/promise/records';
import { keptPromises } from '@/lib/promise/stored-kept';
import { forgetRemembered } from '@/lib/remembered';
import { resetDatabase, useDatabase } from '@/tests/database';
import { takeIn } from '@/tests/makers/course';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const workshop = { timeZone: 'Europe/London', holidayCountry: 'GB', holidayRegion: 'ENG' };
let jobId = '';

useDatabase();
beforeEach(async () => {
  await resetDatabase();
  const { repairId } = await makeWorkshop(now);
  ({ jobId } = await makeBooking({ repairId, now }));
}, 30_000);

type Event = { at: string; kind?: string; from?: string; to?: string; data?: object };

/** A job like the booked one, promised for 16 November, with a life of its own. */
async function job(
  number: string,
  events: Event[],
  change: { readyAt?: string; stage?: string; promised?: string; kind?: string } = {},
) {
  const { id: _, ...copy } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
  await db.job.create({
    data: {
      ...copy,
      number,
      kind: change.kind ?? copy.kind,
      stage: change.stage ?? 'closed',
      bookedAt: new Date('2026-11-01T09:00:00Z'),
      arrivedAt: new Date('2026-11-02T09:00:00Z'),
      readyAt: change.readyAt ? new Date(change.readyAt) : null,
      promisedOn: dayToDate(day(change.promised ?? '2026-11-16')),
      events: {
        create: events.map(({ at, kind = 'moved', from, to, data }, place) => ({
          version: place + 2,
          kind,
          at: new Date(at),
          actorKind: 'staff',
          fromStage: from ?? null,
          toStage: to ?? null,
          data: data ?? {},
        })),
      },
    },
  });
}

const months = async () => (await readTurnaround(now, workshop)).months;

test('each stay lasts from the event that led there to the next, and one that goes on until now', async () => {
  await job('J-1', [
    { at: '2026-11-02T09:00:00Z', from: 'booked', to: 'arrived' },
    { at: '2026-11-02T21:00:00Z', from: 'arrived', to: 'assessing' },
    { at: '2026-11-03T09:00:00Z', kind: 'noted' },
    { at: '2026-11-05T21:00:00Z', from: 'assessing', to: 'awaiting-parts' },
  ]);
  const { stages } = await readTurnaround(now, workshop);
  const told = (stage: string) => stages.find((each) => each.stage === stage);
  expect(told('arrived')).toMatchObject({ waitsOn: 'us', stays: 1, half: { days: 0.5 } });
  expect(told('assessing')).toMatchObject({ stays: 1, stillHere: 0, half: { days: 3 } });
  expect(told('awaiting-parts')).toMatchObject({ waitsOn: 'parts', stays: 1, stillHere: 1, half: null });
});

test('a promise is kept when the unit was ready on its day, and late while it is not ready', async () => {
  // 23:30 UTC is half past eleven in winter: still the day itself.
  await job('J-1', [], { readyAt: '2026-11-16T23:30:00Z' });
  await job('J-2', [], { readyAt: '2026-11-17T09:00:00Z' });
  await job('J-3', [], { stage: 'on-bench' });
  await job('J-4', [], { readyAt: '2026-10-20T09:00:00Z', promised: '2026-10-30' });
  expect(await months()).toEqual([
    { month: '2026-10', promises: 1, kept: 1, notReady: 0 },
    { month: '2026-11', promises: 3, kept: 1, notReady: 1 },
  ]);
});

test('one that waits for the customer since before its day is not late; asked after its day it is', async () => {
  const asked = (at: string) => [{ at, from: 'assessing', to: 'awaiting-approval' }];
  await job('J-1', asked('2026-11-16T10:00:00Z'), { stage: 'awaiting-approval' });
  await job('J-2', asked('2026-11-17T10:00:00Z'), { stage: 'awaiting-approval' });
  // Asked in time and answered: at the bench again.
  await job('J-3', asked('2026-11-16T10:00:00Z'), { stage: 'on-bench' });
  expect(await months()).toEqual([{ month: '2026-11', promises: 2, kept: 0, notReady: 2 }]);
});

test('a promise whose day has not passed is not counted, ready or not', async () => {
  await job('J-1', [], { readyAt: '2026-11-20T09:00:00Z', promised: '2026-11-25' });
  await job('J-2', [], { stage: 'on-bench', promised: '2026-12-01' });
  expect(await months()).toEqual([]);
});

test('a day moved by the workshop is judged by the day before the move, one moved by a wait is not', async () => {
  const moved = { kind: 'promise-moved', data: { from: '2026-11-09', to: '2026-11-16', reason: 'x' } };
  const ready = { readyAt: '2026-11-12T09:00:00Z' };
  await job('J-1', [{ at: '2026-11-08T09:00:00Z', ...moved }], ready);
  await job(
    'J-2',
    [
      { at: '2026-11-08T09:00:00Z', from: 'awaiting-approval', to: 'on-bench' },
      { at: '2026-11-08T09:00:00Z', ...moved },
    ],
    ready,
  );
  expect(await months()).toEqual([{ month: '2026-11', promises: 2, kept: 1, notReady: 0 }]);
});

// Moved by the workshop from Monday 9 to Tuesday 10 November; then the customer answers after five working days, to the 17th.
test('a wait on the customer after a move of the workshop moves the day that counts', async () => {
  const life: Event[] = [
    {
      at: '2026-11-06T09:00:00Z',
      kind: 'promise-moved',
      data: { from: '2026-11-09', to: '2026-11-10', reason: 'x' },
    },
    { at: '2026-11-06T10:00:00Z', from: 'assessing', to: 'awaiting-approval' },
    { at: '2026-11-13T10:00:00Z', from: 'awaiting-approval', to: 'on-bench' },
    {
      at: '2026-11-13T10:00:00Z',
      kind: 'promise-moved',
      data: { from: '2026-11-10', to: '2026-11-17', reason: 'x' },
    },
  ];
  // The fair day is Monday 16: 9 November and five working days.
  await job('J-1', life, { readyAt: '2026-11-16T09:00:00Z', promised: '2026-11-17' });
  await job('J-2', life, { readyAt: '2026-11-17T09:00:00Z', promised: '2026-11-17' });
  await job('J-3', life, { stage: 'on-bench', promised: '2026-11-17' });
  await job('J-4', [], { readyAt: '2026-11-16T09:00:00Z' });
  expect(await months()).toEqual([{ month: '2026-11', promises: 4, kept: 2, notReady: 1 }]);
});

test('a fair day that has not passed is not counted yet', async () => {
  await job(
    'J-1',
    [
      {
        at: '2026-11-17T09:00:00Z',
        kind: 'promise-moved',
        data: { from: '2026-11-18', to: '2026-11-19', reason: 'x' },
      },
      { at: '2026-11-23T10:00:00Z', from: 'awaiting-approval', to: 'on-bench' },
      {
        at: '2026-11-23T10:00:00Z',
        kind: 'promise-moved',
        data: { from: '2026-11-19', to: '2026-11-26', reason: 'x' },
      },
    ],
    { stage: 'on-bench', promised: '2026-11-26' },
  );
  expect(await months()).toEqual([]);
});

test('a unit that was declined had no repair to promise', async () => {
  await job('J-1', [{ at: '2026-11-08T09:00:00Z', from: 'awaiting-approval', to: 'declined' }]);
  await job('J-2', [], { stage: 'cancelled' });
  expect(await months()).toEqual([]);
});

test('a repair that was stopped after its day was a promise not kept, whoever stopped it', async () => {
  const asked = (on: string) => ({ at: `${on}T10:00:00Z`, from: 'on-bench', to: 'awaiting-approval' });
  const stopped = (on: string, from: string) => ({ at: `${on}T11:00:00Z`, from, to: 'declined' });
  // Stopped on the day itself, and asked in time and answered late: nothing was missed.
  await job('J-1', [stopped('2026-11-16', 'on-bench')]);
  await job('J-2', [asked('2026-11-16'), stopped('2026-11-20', 'awaiting-approval')]);
  expect(await months()).toEqual([]);
  // It is packed after that, which is no repair.
  const late = [
    stopped('2026-11-20', 'on-bench'),
    { at: '2026-11-21T10:00:00Z', from: 'declined', to: 'ready' },
  ];
  await job('J-3', late, { readyAt: '2026-11-21T10:00:00Z' });
  await job('J-4', [asked('2026-11-17'), stopped('2026-11-17', 'awaiting-approval')], { stage: 'declined' });
  expect(await months()).toEqual([{ month: '2026-11', promises: 2, kept: 0, notReady: 0 }]);
});

// Moved by the workshop from Monday 9 to Tuesday 10 November, then by a wait of five working days: the fair day is Monday 16.
test('a repair is stopped in time where it was by the day that a wait moved', async () => {
  const life = (stoppedAt: string): Event[] => [
    {
      at: '2026-11-06T09:00:00Z',
      kind: 'promise-moved',
      data: { from: '2026-11-09', to: '2026-11-10', reason: 'x' },
    },
    { at: '2026-11-13T10:00:00Z', from: 'awaiting-approval', to: 'on-bench' },
    {
      at: '2026-11-13T10:00:00Z',
      kind: 'promise-moved',
      data: { from: '2026-11-10', to: '2026-11-17', reason: 'x' },
    },
    { at: stoppedAt, from: 'on-bench', to: 'declined' },
  ];
  await job('J-1', life('2026-11-16T10:00:00Z'), { stage: 'declined', promised: '2026-11-17' });
  expect(await months()).toEqual([]);
  await job('J-2', life('2026-11-17T10:00:00Z'), { stage: 'declined', promised: '2026-11-17' });
  expect(await months()).toEqual([{ month: '2026-11', promises: 1, kept: 0, notReady: 0 }]);
});

test('a claim that goes back unrepaired was promised nothing, and tells nothing of a repair', async () => {
  const packed = { at: '2026-11-04T09:00:00Z', from: 'assessing', to: 'ready' };
  const again = [
    packed,
    { at: '2026-11-05T09:00:00Z', from: 'ready', to: 'assessing' },
    { at: '2026-11-06T09:00:00Z', from: 'assessing', to: 'on-bench' },
  ];
  const proved = { at: '2026-11-10T09:00:00Z', from: 'proving', to: 'ready' };
  await job('J-1', [packed], { kind: 'claim', readyAt: packed.at });
  expect(await months()).toEqual([]);
  // Contested and then repaired; contested and at the bench again.
  await job('J-2', [...again, proved], { kind: 'claim', readyAt: proved.at });
  await job('J-3', again, { kind: 'claim', stage: 'on-bench' });
  expect(await months()).toEqual([{ month: '2026-11', promises: 2, kept: 1, notReady: 1 }]);
  // New promises are drawn from the same jobs.
  expect(await readBenchJobs({ zone: workshop.timeZone, now })).toHaveLength(2);
});

test('a no that became a yes leaves a repair to promise, unless another no came after it', async () => {
  const taken = [
    { at: '2026-11-06T09:00:00Z', from: 'awaiting-approval', to: 'declined' },
    { at: '2026-11-07T09:00:00Z', from: 'declined', to: 'on-bench' },
  ];
  await job('J-1', taken);
  await job('J-2', [...taken, { at: '2026-11-08T09:00:00Z', from: 'awaiting-approval', to: 'declined' }]);
  expect((await months()).map(({ promises }) => promises)).toEqual([1]);
  // New promises are drawn from the same jobs.
  expect(await readBenchJobs({ zone: workshop.timeZone, now })).toHaveLength(1);
});

test('whoever sends in a unit is told how many promises were kept, once there are twelve', async () => {
  const ready = ['2026-11-13T15:00:00Z', '2026-11-16T15:00:00Z', '2026-11-17T09:00:00Z'];
  for (let n = 0; n < 11; n += 1) await job(`J-${n}`, [], { readyAt: ready[n % 3] ?? '' });
  expect(await keptPromises(now, workshop)).toBeNull();
  await job('J-11', [], { readyAt: '2026-11-16T15:00:00Z' });
  forgetRemembered();
  // Of the first eleven, the third of every three came a day late.
  expect(await keptPromises(now, workshop)).toEqual({ promises: 12, kept: 9 });
  await takeIn(jobId, now);
  const mail = await db.mail.findFirstOrThrow({ where: { jobId, template: 'unit-arrived' } });
  expect(mail.data).toMatchObject({ kept: { promises: 12, kept: 9 } });
});
