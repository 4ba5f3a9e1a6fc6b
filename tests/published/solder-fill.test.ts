import { describe, expect, test } from 'vitest';
import { type FillFacts, fillLimit } from '@/lib/bench/rules/solder-fill';

const small: FillFacts = { ipcClass: 2, leads: 4, boardMm: 1.6 };

describe('vertical fill of a plated-through hole with a lead (IPC-A-610F Table 7-4, J-STD-001)', () => {
  test.each([
    { name: 'class 2, few leads: 75 %', facts: small, percent: 75, mm: 1.2 },
    { name: 'class 3, few leads: 75 %', facts: { ...small, ipcClass: 3 }, percent: 75, mm: 1.2 },
    { name: 'class 2, 13 leads: still 75 %', facts: { ...small, leads: 13 }, percent: 75, mm: 1.2 },
    { name: 'class 2, 14 leads: 50 %', facts: { ...small, leads: 14 }, percent: 50, mm: 0.8 },
    {
      name: 'class 2, 20-lead header in 1.6 mm: 0.8 mm is enough',
      facts: { ...small, leads: 20 },
      percent: 50,
      mm: 0.8,
    },
    {
      name: 'class 2, 20 leads in 3.2 mm: 1.2 mm is less than half',
      facts: { ...small, leads: 20, boardMm: 3.2 },
      percent: 37.5,
      mm: 1.2,
    },
    {
      name: 'class 3, 20 leads in 1.6 mm: always 75 %',
      facts: { ...small, ipcClass: 3, leads: 20 },
      percent: 75,
      mm: 1.2,
    },
    {
      name: 'class 3, 20 leads in 3.2 mm: always 75 %',
      facts: { ...small, ipcClass: 3, leads: 20, boardMm: 3.2 },
      percent: 75,
      mm: 2.4,
    },
    {
      name: 'class 2 at a heat-sinking plane: 50 %',
      facts: { ...small, isHeatPlane: true },
      percent: 50,
      mm: 0.8,
    },
    {
      name: 'class 3 at a heat-sinking plane: no relief',
      facts: { ...small, ipcClass: 3, isHeatPlane: true },
      percent: 75,
      mm: 1.2,
    },
  ] as const)('$name', ({ facts, percent, mm }) => {
    const limit = fillLimit(facts);
    expect(limit).toEqual({
      isSpecified: true,
      percent: expect.closeTo(percent, 6),
      mm: expect.closeTo(mm, 6),
    });
  });

  test('class 1 specifies none', () => {
    expect(fillLimit({ ...small, ipcClass: 1 })).toEqual({ isSpecified: false });
  });
});

test.each([
  { ...small, boardMm: 0 },
  { ...small, leads: 0 },
  { ...small, leads: 1.5 },
])('a board of $boardMm mm with $leads leads is refused', (facts) => {
  expect(() => fillLimit(facts)).toThrow(RangeError);
});
