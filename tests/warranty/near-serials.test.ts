import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { lookAlikeKey } from '@/lib/numbers/near-serial';
import { compareSerials, foldSerial } from '@/lib/numbers/serial';
import { nearIds, nearSerials } from '@/lib/warranty/near-serials';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { jobNow, makeCertificate, moveTo } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

const SENT = new Date('2026-11-20T10:00:00Z');
const NOW = new Date('2026-11-26T09:00:00Z');
const LATER = new Date('2026-11-27T09:00:00Z');
const ZONE = { timeZone: 'Europe/London' };
const SEARCHED = 'HW2-77001-A';

let certified: { number: string; jobId: string };
let booked: { number: string; jobId: string };
let oneOff: { number: string; jobId: string };

beforeAll(async () => {
  const world = await makeWorkshop(SENT);
  certified = await makeCertificate(world, SENT, SEARCHED);
  booked = await makeBooking({ repairId: world.repairId, now: NOW, serial: 'HW2-7700I-A' });
  oneOff = await makeBooking({ repairId: world.repairId, now: LATER, serial: 'HW2-77002-A' });
  await makeBooking({ repairId: world.repairId, now: LATER, serial: 'QF9-11200-C' });
  const gone = await makeBooking({ repairId: world.repairId, now: LATER, serial: 'HW2-77003-A' });
  await moveTo(gone.jobId, 'cancel', LATER);
}, 120_000);

describe('a serial that may have been misread', () => {
  it('leads to the jobs and the certificate it is close to, look-alikes first, then the newest', async () => {
    const { jobs, certificates } = await nearSerials('HW2-77OO1-A', ZONE);
    // Two look-alikes away from the first two; the third differs by look-alikes and another character.
    expect(jobs.map((job) => job.number)).toEqual([booked.number, (await jobNow(certified.jobId)).number]);
    expect(jobs[0]).toMatchObject({
      serial: 'HW2-7700I-A',
      stage: 'booked',
      unit: 'Tideline HW-2',
      customer: 'Maren Holt',
      bookedOn: '2026-11-26',
    });
    expect(certificates).toEqual([
      {
        number: certified.number,
        revision: 1,
        serial: SEARCHED,
        unit: 'Tideline HW-2',
        jobNumber: (await jobNow(certified.jobId)).number,
        endsOn: '2027-11-20',
      },
    ]);
  });

  it('is never the very serial itself, and no cancelled booking', async () => {
    const { jobs, certificates } = await nearSerials(' hw2 77001 a', ZONE);
    expect(jobs.map((job) => job.number)).toEqual([booked.number, oneOff.number]);
    expect(certificates).toEqual([]);
  });

  it.each([
    ['one character wrong', 'HW2-77801-A', 1],
    ['one missing', 'HW2-7701-A', 1],
    ['one added', 'HW2-770014-A', 1],
    ['two swapped', 'HW2-70701-A', 1],
    ['a letter of another alphabet', 'HW2-77\u041601-A', 1],
    ['two characters wrong', 'HW2-88001-A', 0],
    ['a look-alike and another fault', 'HW2-7O801-A', 0],
  ])('%s finds %s', async (_name, typed, certificates) => {
    expect((await nearSerials(typed, ZONE)).certificates).toHaveLength(certificates);
  });

  it.each(['', ' - ', 'HW2', '%%%%', '____', 'HW2-'.repeat(1000)])('nothing comes of %j', async (typed) => {
    expect(await nearSerials(typed, ZONE)).toEqual({ jobs: [], certificates: [] });
  });
});

describe('what the database proposes', () => {
  it('comes to exactly the serials that compareSerials calls a likely misread', async () => {
    const keys = await manySerials();
    const letters = fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ');
    const misread = fc
      .tuple(fc.constantFrom(...keys), fc.nat(), letters, fc.constantFrom('replace', 'drop', 'add', 'looks'))
      .map(([text, at, other, kind]) => {
        const i = at % text.length;
        if (kind === 'looks') return text.replaceAll('0', 'O').replaceAll('1', 'I');
        if (kind === 'drop') return text.slice(0, i) + text.slice(i + 1);
        return text.slice(0, i) + other + text.slice(kind === 'add' ? i : i + 1);
      });
    const stored = await db.job.findMany({ select: { id: true, serialKey: true } });
    await fc.assert(
      fc.asyncProperty(misread, async (typed) => {
        const expected = stored
          .filter((row) => compareSerials(row.serialKey, typed) === 'likely-misread')
          .map((row) => row.id)
          .toSorted();
        expect((await nearIds('job', typed)).toSorted()).toEqual(expected);
      }),
      { numRuns: 60 },
    );
  });

  it('folds look-alikes as the rules do', async () => {
    const text = fc.string({ unit: fc.constantFrom(...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ\u00C9') });
    for (const key of fc.sample(text, 50)) {
      const [row] = await db.$queryRaw<{ folded: string }[]>`
        SELECT translate(${key}, 'OQDILJZSGB', '0001112568') AS folded`;
      expect(row?.folded).toBe(lookAlikeKey(key));
    }
  });
});

/** Two hundred jobs more, whose serials are close to each other in every way. */
async function manySerials(): Promise<string[]> {
  const { id: _, number: __, ...first } = await db.job.findFirstOrThrow({ where: { id: booked.jobId } });
  const serials = Array.from(
    { length: 200 },
    (___, i) => `HW${1 + (i % 3)}-${71_000 + i * 7}-${'AB0O'[i % 4]}`,
  );
  await db.job.createMany({
    data: serials.map((serial, i) => ({
      ...first,
      id: randomUUID(),
      number: `J${String(i).padStart(8, '0')}`,
      promisedOn: dayToDate(day('2026-12-01')),
      serialTyped: serial,
      serialKey: foldSerial(serial),
    })),
  });
  return serials.map(foldSerial);
}
