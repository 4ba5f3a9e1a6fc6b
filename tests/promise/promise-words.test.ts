import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { promiseWords } from '@/lib/promise/rules/promise-words';

const answer = { on: day('2026-12-10'), days: 7, basis: 'repair', jobs: 34, queueDays: 1 } as const;

test('a promise before the unit is here names its day, and the jobs behind it', () => {
  expect(promiseWords(answer, 'en-GB')).toBe(
    'If it were here today: by Thursday 10 December 2026. Four of five of our last 34 jobs of this kind needed no longer, today’s queue counted in.',
  );
});

test('one by hand says that it is an estimate, and counts nothing', () => {
  const words = promiseWords({ ...answer, basis: 'by-hand', jobs: 0 }, 'en-GB');
  expect(words).toContain('an estimate by hand');
  expect(words).not.toContain('of our last');
});
