import { randomInt } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { newNumber } from '@/lib/numbers/draw';
import { drawNumber, NUMBER_ALPHABET } from '@/lib/numbers/job-number';
import { MISSES_AN_HOUR } from '@/lib/people/limit-misses';

/** Seven characters drawn from 32; those whose check character is one of the five left out are drawn again: 32 of 37 stay. */
const SPACE = 32 ** 7 * (32 / 37);
const MISSES_A_DAY = 24 * MISSES_AN_HOUR.everybody;

describe('guessing a number', () => {
  it('has as many to draw from as SECURITY.md says', () => {
    expect(NUMBER_ALPHABET).toHaveLength(32);
    let drawn = 0;
    const rounds = 20_000;
    for (let i = 0; i < rounds; i += 1) {
      drawNumber('J', (below) => {
        drawn += 1;
        return randomInt(below);
      });
    }
    // Draws for each number: 37/32 = 1.156 times seven. Five standard errors of a geometric count are 0.015 of that here.
    expect(drawn / rounds / 7).toBeGreaterThan(37 / 32 - 0.02);
    expect(drawn / rounds / 7).toBeLessThan(37 / 32 + 0.02);
    expect(SPACE).toBeCloseTo(2.972e10, -8);
  });

  it.each([
    [1_000, 3.4e-8, 0.00032],
    [100_000, 3.4e-6, 0.0318],
  ])('with %i jobs a guess fits with a chance of %f, and some guess of a day of %f', (jobs, one, day) => {
    const chance = jobs / SPACE;
    expect(chance).toBeCloseTo(one, one < 1e-7 ? 9 : 7);
    // The most that a day lets through, every hour spent to the last miss, from any number of addresses.
    expect(1 - (1 - chance) ** MISSES_A_DAY).toBeCloseTo(day, day < 0.001 ? 4 : 3);
  });

  it('is as hard as counted: drawn numbers hit each other as often as even chance says', () => {
    const jobs = new Set(Array.from({ length: 200_000 }, () => newNumber('J')));
    // Only the first four random characters are compared, so that hits are frequent enough to count: 32^4 of them.
    const heads = new Set([...jobs].map((number) => number.slice(1, 5)));
    let hits = 0;
    const guesses = 20_000;
    for (let i = 0; i < guesses; i += 1) if (heads.has(newNumber('J').slice(1, 5))) hits += 1;
    // Expected share of heads taken: 1 - e^(-200000/32^4) = 0.1736; six standard errors are 0.016.
    expect(hits / guesses).toBeGreaterThan(0.1736 - 0.016);
    expect(hits / guesses).toBeLessThan(0.1736 + 0.016);
  });
});
