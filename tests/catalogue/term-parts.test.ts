import { describe, expect, test } from 'vitest';
import { policySchema } from '@/app/workshop/(inside)/catalogue/policies/policy-schema';
import { partSchema } from '@/app/workshop/(inside)/parts/part-schema';
import { isPeriod } from '@/lib/calendar/period';
import { readTerm, TERM_UNIT_KEYS, termParts } from '@/lib/catalogue/rules/term-parts';

describe('a term as a number and its unit', () => {
  // ISO 8601: a duration is P, a number, and D, W, M or Y.
  test.each(['P90D', 'P2W', 'P12M', 'P1Y'])('%s comes back as it was stored', (term) => {
    const { count, unit } = termParts(term);
    expect(count).toMatch(/^\d+$/);
    expect(readTerm(count, unit)).toBe(term);
  });

  test('of several units, as a file brings it, stays what it is', () => {
    const { count, unit } = termParts('P1Y6M');
    expect(readTerm(count, unit)).toBe('P1Y6M');
  });

  test('is none where nothing stands, and no period where it is nothing or words', () => {
    for (const unit of TERM_UNIT_KEYS) expect(readTerm('', unit)).toBeNull();
    expect(termParts(null)).toEqual({ count: '', unit: 'M' });
    expect(isPeriod(readTerm('0', 'M') ?? '')).toBe(false);
    expect(isPeriod(readTerm('a year', 'M') ?? '')).toBe(false);
  });

  test('is read from the forms of a policy and of a part', () => {
    const policy = policySchema.parse({
      name: 'Connector work',
      startEvent: 'delivered',
      workTerm: '1',
      workTermUnit: 'Y',
      renewedMinimum: '90',
      renewedMinimumUnit: 'D',
      partsTermUnit: 'M',
      heldRule: 'whole-days',
      rollLastDay: 'yes',
      graceDays: '7',
      transferable: 'no',
    });
    expect(policy.terms).toMatchObject({ workTerm: 'P1Y', partsTerm: null, renewedMinimum: 'P90D' });
    expect(policy.terms).not.toHaveProperty('workTermUnit');
    const part = { code: 'SOC-1', name: 'Socket', reorderAt: '5' };
    expect(partSchema.parse({ ...part, term: '6', termUnit: 'M' })).toEqual({
      ...part,
      term: 'P6M',
      reorderAt: 5,
    });
    expect(partSchema.safeParse({ ...part, term: '6', termUnit: 'H' }).success).toBe(false);
  });
});
