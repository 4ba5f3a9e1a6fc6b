import { beforeEach, describe, expect, it } from 'vitest';
import { db } from '@/lib/db/client';
import { attempt, type Outcome } from '@/lib/outcome';
import { saveCarrier } from '@/lib/parcels/save-carrier';
import { blankWorkshop } from '@/lib/workshop/card';
import { saveSettings } from '@/lib/workshop/save-settings';
import { detailsInput } from '@/lib/workshop/settings-input';
import { resetDatabase, useDatabase } from '@/tests/database';

useDatabase();
beforeEach(resetDatabase, 30_000);

const codes = (outcomes: readonly Outcome<unknown>[]) =>
  outcomes.map((outcome) => (outcome.ok ? 'done' : outcome.refusal.code)).sort();

describe('settings, whoever races', () => {
  it.each([1, 2, 3, 4, 5])('four first saves at once make one row, round %i', async () => {
    const details = detailsInput.parse({
      name: 'Quay & Alder',
      tagline: 'Portable music electronics, repaired by post',
      addressLines: '3 Alder Slip\nHarbour Row',
      postcode: 'QM1 4QA',
      town: 'Sandmouth',
      country: 'GB',
      email: 'workshop@example.org',
      phone: '01632 960123',
      territory: 'the United Kingdom',
    });
    const outcomes = await Promise.all(
      ['First', 'Second', 'Third', 'Fourth'].map((name) =>
        attempt(() => saveSettings({ ...details, name }, blankWorkshop.updatedAt)),
      ),
    );
    expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'conflict', 'done']);
    expect(await db.workshop.count()).toBe(1);
  });

  it('a carrier’s name is taken once when several enter it at the same moment', async () => {
    const carrier = {
      kind: 'road',
      divisor: 4000,
      wholeSides: true,
      stepGrams: 250,
      maxGrams: 15_000,
      longestSideMm: 800,
      maxValueMinor: 30_000,
      tracking: '',
      daysHome: 5,
      daysAbroad: 20,
      position: 3,
      isUsed: true,
    } as const;
    const outcomes = await Promise.all(
      ['Lugger Lines', 'lugger lines', 'LUGGER LINES'].map((name) =>
        attempt(() => saveCarrier(null, { ...carrier, name })),
      ),
    );
    expect(codes(outcomes)).toEqual(['conflict', 'conflict', 'done']);
    expect(await db.carrier.count()).toBe(1);
  });
});
