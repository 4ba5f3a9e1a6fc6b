import { expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import { AIMS, readAim, shareOf } from '@/lib/promise/rules/aim';
import { keptTally } from '@/lib/promise/rules/kept';
import { keptWords, promiseWords } from '@/lib/promise/rules/promise-words';

const answer = { on: day('2026-12-10'), days: 7, basis: 'repair', jobs: 34, queueDays: 1 } as const;

test('a promise before the unit is here names its day, and the jobs behind it', () => {
  expect(promiseWords(answer, { locale: 'en-GB', aim: 80 })).toBe(
    'If it were here today: by Thursday 10 December 2026. Four of five of our last 34 jobs of this kind needed no longer, today’s queue counted in.',
  );
});

test('one by hand says that it is an estimate, and counts nothing', () => {
  const words = promiseWords({ ...answer, basis: 'by-hand', jobs: 0 }, { locale: 'en-GB', aim: 80 });
  expect(words).toContain('an estimate by hand');
  expect(words).not.toContain('of our last');
});

test('the share it names is the one that the workshop aims at', () => {
  const shares = AIMS.map(
    (aim) => promiseWords(answer, { locale: 'en-GB', aim }).match(/2026\. (.*) of our/)?.[1],
  );
  expect(shares).toEqual(['Half', 'Seven in ten', 'Four of five', 'Nine in ten', 'Nineteen of twenty']);
  expect(AIMS.map(shareOf)).toEqual([0.5, 0.7, 0.8, 0.9, 0.95]);
  expect([readAim(95), readAim(60)]).toEqual([95, 80]);
});

test('how often promises were kept is said from twelve on', () => {
  const month = (promises: number, kept: number) => ({ month: '2026-11', promises, kept, notReady: 0 });
  expect(keptTally([month(5, 5), month(6, 4)])).toBeNull();
  expect(keptWords(null)).toBeNull();
  const tally = keptTally([month(20, 16), month(20, 15)]);
  expect(keptWords(tally)).toBe('Of our last 40 promises whose day has come we kept 31.');
  expect(keptWords(keptTally([month(12, 12)]))).toBe(
    'Of our last 12 promises whose day has come we kept all.',
  );
  expect(keptWords(keptTally([month(12, 0)]))).toBe(
    'Of our last 12 promises whose day has come we kept none.',
  );
});
