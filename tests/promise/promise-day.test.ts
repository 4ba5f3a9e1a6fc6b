import { beforeEach, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { promisesToday } from '@/lib/promise/promises-today';
import { readBacktest } from '@/lib/promise/read-backtest';
import { readBenchJobs } from '@/lib/promise/records';
import { benchDays } from '@/lib/promise/rules/bench-days';
import { promiseDay } from '@/lib/promise/stored-promise-day';
import { resetDatabase, useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

const now = new Date('2026-11-25T09:00:00Z');
const zone = 'Europe/London';
let repairId = '';
let jobId = '';

useDatabase();
beforeEach(async () => {
  await resetDatabase();
  ({ repairId } = await makeWorkshop(now));
  ({ jobId } = await makeBooking({ repairId, now }));
}, 30_000);

type Wait = { from: string; to: string | null };

/** A job like the booked one, that arrived and was ready on the given days. */
async function finished(
  number: string,
  arrived: string,
  ready: string | null,
  waits: Wait[] = [],
  left = 'on-bench',
) {
  const { id: _, ...copy } = await db.job.findUniqueOrThrow({ where: { id: jobId } });
  const moves = waits.flatMap(({ from, to }) => [
    { at: from, toStage: 'awaiting-approval', fromStage: 'assessing' },
    ...(to ? [{ at: to, toStage: left, fromStage: 'awaiting-approval' }] : []),
  ]);
  await db.job.create({
    data: {
      ...copy,
      number,
      stage: ready ? 'closed' : 'assessing',
      arrivedAt: new Date(arrived),
      readyAt: ready ? new Date(ready) : null,
      events: {
        create: moves.map(({ at, ...stages }, i) => ({
          ...stages,
          version: i + 2,
          kind: 'moved',
          at: new Date(at),
          actorKind: 'staff',
          data: {},
        })),
      },
    },
  });
}

test('a workshop without finished jobs promises the stated days, by hand', async () => {
  const answer = await promiseDay({ repairId, now });
  expect(answer).toMatchObject({ basis: 'by-hand', days: 5, on: '2026-12-02' });
});

test('with twelve finished jobs it promises what four of five needed, inside a transaction too', async () => {
  for (let i = 0; i < 12; i += 1) {
    const monday = new Date(Date.UTC(2026, 5, 1 + i * 7, 10));
    const ready = new Date(monday.getTime() + (i < 9 ? 2 : 4) * 86_400_000);
    await finished(`J000000${String(i).padStart(2, '0')}`, monday.toISOString(), ready.toISOString());
  }
  const answer = await transaction((tx) => promiseDay({ repairId, now }, tx));
  expect(answer).toMatchObject({ basis: 'repair', jobs: 12, days: 4, on: '2026-12-01' });
  // Nine of the twelve needed two days, which is enough for seven in ten.
  await db.workshop.update({ where: { id: 1 }, data: { promiseAim: 70 } });
  expect(await promiseDay({ repairId, now })).toMatchObject({ jobs: 12, days: 2 });
  expect((await promisesToday([repairId], now)).get(repairId)).toMatchObject({ jobs: 12, days: 2 });
  expect((await readBacktest(now)).quantile).toBe(0.7);
});

test('the days of a quote are kept to, from the end of the time to withdraw', async () => {
  const answer = await promiseDay({ repairId, quotedDays: 20, waitsUntil: day('2026-12-04'), now });
  // From Friday 4 December on; Christmas Day, 28 December (for Boxing Day) and New Year's Day are no working days.
  expect(answer).toMatchObject({ basis: 'quoted', days: 20, on: '2027-01-06' });
});

test('a job is read by the days of the workshop, with its waits for the customer', async () => {
  await finished('J00000001', '2026-06-01T23:30:00Z', '2026-06-12T10:00:00Z', [
    { from: '2026-06-03T09:00:00Z', to: '2026-06-05T09:00:00Z' },
    { from: '2026-06-08T09:00:00Z', to: '2026-06-09T09:00:00Z' },
  ]);
  await finished('J00000002', '2026-11-20T09:00:00Z', null, [{ from: '2026-11-23T09:00:00Z', to: null }]);
  expect(await readBenchJobs({ zone, now })).toMatchObject([
    {
      arrivedOn: '2026-06-02',
      readyOn: '2026-06-12',
      minutes: 60,
      statedDays: 5,
      waited: [
        { from: '2026-06-03', to: '2026-06-05' },
        { from: '2026-06-08', to: '2026-06-09' },
      ],
    },
    { arrivedOn: '2026-11-20', readyOn: null, waited: [{ from: '2026-11-23', to: null }] },
  ]);
});

test('a unit sent back unrepaired, one that never came and one of long ago are left out', async () => {
  const wait = [{ from: '2026-06-03T09:00:00Z', to: '2026-06-04T09:00:00Z' }];
  await finished('J00000001', '2026-06-02T09:00:00Z', '2026-06-05T09:00:00Z', wait, 'declined');
  await finished('J00000002', '2025-06-02T09:00:00Z', '2025-06-05T09:00:00Z');
  expect(await readBenchJobs({ zone, now })).toEqual([]);
});

test('a no that became a yes is repaired, and the days between are no bench days', async () => {
  const number = 'J00000001';
  const wait = [{ from: '2026-06-03T09:00:00Z', to: '2026-06-04T09:00:00Z' }];
  await finished(number, '2026-06-02T09:00:00Z', '2026-06-12T10:00:00Z', wait, 'declined');
  const { id } = await db.job.findUniqueOrThrow({ where: { number } });
  const yes = { fromStage: 'declined', toStage: 'on-bench', at: new Date('2026-06-08T09:00:00Z') };
  await db.jobEvent.create({
    data: { jobId: id, version: 9, kind: 'moved', actorKind: 'customer', data: {}, ...yes },
  });
  expect((await readBenchJobs({ zone, now })).map(({ waited }) => waited)).toEqual([
    [
      { from: '2026-06-03', to: '2026-06-04' },
      { from: '2026-06-04', to: '2026-06-08' },
    ],
  ]);
});

test('days in which work waited for the right to withdraw are not bench days', async () => {
  const change = async (number: string, data: object) => {
    await finished(number, '2026-06-02T09:00:00Z', '2026-06-19T10:00:00Z');
    await db.job.update({ where: { number }, data });
  };
  const agreed = { termsAcceptedAt: new Date('2026-05-30T09:00:00Z'), withdrawUntil: new Date('2026-06-13') };
  await change('J00000001', agreed);
  // Asked for the start on Friday 5 June; before the unit came; and a parcel without a booking, agreed to here.
  await change('J00000002', { ...agreed, startRequestedAt: new Date('2026-06-05T09:00:00Z') });
  await change('J00000003', { ...agreed, startRequestedAt: agreed.termsAcceptedAt });
  await change('J00000004', {
    termsAcceptedAt: new Date('2026-06-04T09:00:00Z'),
    withdrawUntil: new Date('2026-06-18'),
  });
  const jobs = await readBenchJobs({ zone, now });
  const waited = jobs.map((job) => job.waited);
  expect(waited).toHaveLength(4);
  expect(waited).toEqual(
    expect.arrayContaining([
      [{ from: '2026-06-02', to: '2026-06-13' }],
      [{ from: '2026-06-02', to: '2026-06-05' }],
      [],
      [{ from: '2026-06-04', to: '2026-06-18' }],
    ]),
  );
  const calendar = { weekend: [6, 7], closed: new Map<string, string>() };
  // Tuesday 2 to Friday 19 June 2026 are 13 working days; eight, three, none and ten of them were waits.
  expect(jobs.map((job) => benchDays(job, calendar)).sort((a, b) => a - b)).toEqual([3, 5, 10, 13]);
});

test('a claim whose unit went back unrepaired says nothing of a repair, unless it was contested and then repaired', async () => {
  const claims = [
    ['J00000001', [['assessing', 'ready']]],
    [
      'J00000002',
      [
        ['assessing', 'ready'],
        ['ready', 'assessing'],
        ['proving', 'ready'],
      ],
    ],
    ['J00000003', [['proving', 'ready']]],
  ] as const;
  for (const [number, moves] of claims) {
    await finished(number, '2026-06-02T09:00:00Z', '2026-06-05T09:00:00Z');
    await db.job.update({
      where: { number },
      data: {
        kind: 'claim',
        events: {
          create: moves.map(([fromStage, toStage], i) => ({
            fromStage,
            toStage,
            version: i + 2,
            kind: 'moved',
            at: new Date('2026-06-05T09:00:00Z'),
            actorKind: 'staff',
            data: {},
          })),
        },
      },
    });
  }
  expect(await readBenchJobs({ zone, now })).toHaveLength(2);
});

test('a repair that is gone is refused', async () => {
  await expect(promiseDay({ repairId: 'none', now })).rejects.toMatchObject({ code: 'not-found' });
});
