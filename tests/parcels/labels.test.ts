import { beforeAll, describe, expect, it, test } from 'vitest';
import { labelsPerSheet } from '@/lib/documents/bag-label';
import { labelsOfArrived } from '@/lib/jobs/label-data';
import { readPlaces } from '@/lib/parcels/rules/label-places';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { moveTo, takeIn } from '@/tests/makers/walk';
import { makeWorkshop } from '@/tests/makers/workshop';

test.each([
  ['', null],
  ['place=1', { first: 0, count: 1 }],
  ['place=27&count=3', { first: 26, count: 3 }],
  ['place=28', { first: 0, count: 1 }],
  ['place=0&count=0', { first: 0, count: 1 }],
  ['place=-2&count=999', { first: 0, count: 1 }],
  ['place=two', { first: 0, count: 1 }],
])('places "%s" on a sheet', (asked, places) => {
  expect(readPlaces(new URLSearchParams(asked), labelsPerSheet)).toEqual(places);
});

describe('labels of what has arrived', () => {
  useDatabase();
  const YESTERDAY = new Date('2026-11-24T15:00:00Z');
  const NOW = new Date('2026-11-25T10:00:00Z');
  let waiting: { number: string };

  beforeAll(async () => {
    const { repairId } = await makeWorkshop(YESTERDAY);
    const later = await makeBooking({ repairId, now: YESTERDAY, serial: 'HW2-1' });
    await takeIn(later.jobId, NOW);
    await moveTo(later.jobId, 'assess', NOW);
    const made = await makeBooking({ repairId, now: YESTERDAY, serial: 'HW2-2' });
    await takeIn(made.jobId, NOW);
    await makeBooking({ repairId, now: NOW, serial: 'HW2-3' });
    waiting = made;
  }, 60_000);

  it('are those of the units that wait to be assessed', async () => {
    expect(await labelsOfArrived()).toMatchObject([{ job: waiting.number, serial: 'HW2-2' }]);
    expect((await labelsOfArrived())[0]?.code).toMatch(new RegExp(`/workshop/jobs/${waiting.number}$`));
  });
});
