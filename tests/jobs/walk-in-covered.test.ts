import { randomUUID } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { type WalkIn, walkIn } from '@/lib/jobs/walk-in';
import { showNumber } from '@/lib/numbers/job-number';
import { useDatabase } from '@/tests/database';
import { makeCertificate } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

useDatabase();

// P12M from 25 November 2026 ends on 25 November 2027.
const NOW = new Date('2026-11-25T10:00:00Z');
const LAST_DAY = new Date('2027-11-25T23:30:00Z');
const DAY_AFTER = new Date('2027-11-26T00:30:00Z');

let number = '';
let came: WalkIn;
beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  ({ number } = await makeCertificate(world, NOW, 'HW2-70006-A'));
  came = {
    customer: {
      name: 'Perran Veale',
      email: 'perran.veale@example.org',
      phone: '',
      address1: '3 Wherry Steps',
      address2: '',
      postcode: 'QM1 2AB',
      town: 'Sandmouth',
      country: 'GB',
    },
    repairId: world.repairId,
    serial: 'hw2 70006 a',
    problem: 'A letter says: it does not charge again',
    extra: [],
    batteryAnswer: 'healthy',
    isOtherMatter: false,
    photos: [],
    formKey: randomUUID(),
    actor: BENCH,
    now: LAST_DAY,
  };
}, 60_000);

const walkIns = () => db.job.count({ where: { serialKey: 'HW270006A' } }).then((jobs) => jobs - 1);

it('a parcel without a booking is refused on the last day of its unit’s cover, and led to a claim', async () => {
  await expect(walkIn(came)).rejects.toMatchObject({
    code: 'conflict',
    field: 'serial',
    message: expect.stringContaining(`Certificate ${showNumber(number)} covers this unit until 25 Nov 2027.`),
  });
  expect(await walkIns()).toBe(0);
});

it('another unit with no certificate is not asked about', async () => {
  await walkIn({ ...came, serial: 'HW2-70008-A' });
  expect(await db.job.count({ where: { serialKey: 'HW270008A' } })).toBe(1);
});

it('it is taken in where it came for something else', async () => {
  await walkIn({ ...came, isOtherMatter: true });
  expect(await walkIns()).toBe(1);
});

it('nothing is asked once cover has ended', async () => {
  await walkIn({ ...came, formKey: randomUUID(), now: DAY_AFTER });
  expect(await walkIns()).toBe(2);
});
