import { describe, expect, it } from 'vitest';
import {
  monthsBefore,
  REMOVAL_SENTENCES,
  type RemovalFacts,
  removalProblems,
} from '@/lib/keeping/rules/retention';

describe('the instant some months earlier', () => {
  it.each([
    ['2026-08-31T10:00:00.000Z', 6, '2026-02-28T10:00:00.000Z'],
    ['2028-08-31T10:00:00.000Z', 6, '2028-02-29T10:00:00.000Z'],
    ['2026-03-31T10:00:00.000Z', 1, '2026-02-28T10:00:00.000Z'],
    ['2026-01-15T10:00:00.000Z', 12, '2025-01-15T10:00:00.000Z'],
    ['2026-01-31T23:59:59.999Z', 2, '2025-11-30T23:59:59.999Z'],
  ])('%s less %i is %s', (now, months, expected) => {
    expect(monthsBefore(new Date(now), months).toISOString()).toBe(expected);
  });
});

// GDPR Article 17 with its exceptions in (3) for what stays; what has to end before is the workshop's own (common practice, no source).
describe('what stands against removing somebody’s data', () => {
  const NOTHING: RemovalFacts = {
    openJobs: [],
    openQuotes: [],
    openClaims: [],
    soughtParcels: [],
    postageAsked: [],
    liveCover: [],
  };
  it.each([
    ['openJobs', 'open-job'],
    ['openQuotes', 'open-quote'],
    ['openClaims', 'open-claim'],
    ['soughtParcels', 'sought-parcel'],
    ['postageAsked', 'postage-asked'],
  ] as const)('is one of %s, whatever was confirmed', (fact, problem) => {
    for (const isConfirmed of [false, true])
      expect(removalProblems({ ...NOTHING, [fact]: ['one'] }, isConfirmed)).toEqual([problem]);
  });

  it('is live cover until the owner has confirmed what becomes of it', () => {
    expect(removalProblems({ ...NOTHING, liveCover: ['one'] }, false)).toEqual(['live-cover']);
    expect(removalProblems({ ...NOTHING, liveCover: ['one'] }, true)).toEqual([]);
  });

  it('is nothing where nothing is open, and all of it together where all is', () => {
    expect(removalProblems(NOTHING, false)).toEqual([]);
    const all = Object.fromEntries(Object.keys(NOTHING).map((fact) => [fact, ['one']]));
    expect(removalProblems({ ...NOTHING, ...all }, false).toSorted()).toEqual(
      Object.keys(REMOVAL_SENTENCES).toSorted(),
    );
  });
});
