import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { detour } from '@/lib/warranty/rules/sent-again';
import type { StartEvent } from '@/lib/warranty/rules/terms';

// Common practice, no source.
describe('the days lost when a unit leaves again, or at last', () => {
  it.each([
    ['from 10 to 22 December, where cover starts at delivery', 'delivered', '2026-12-22', '2026-12-22'],
    ['one, where it would start a day later', 'delivered', '2026-12-11', '2026-12-11'],
    ['none where cover starts with the carrier', 'handed-to-carrier', '2026-12-22', null],
    ['none where it would start on the same day', 'delivered', '2026-12-10', null],
    ['none where it would start earlier', 'delivered', '2026-12-09', null],
    [
      'two, where it never went to the carrier it starts with',
      'handed-to-carrier',
      '2026-12-12',
      '2026-12-12',
      false,
    ],
    ['two, where it was not collected', 'collected', '2026-12-12', '2026-12-12', false],
    ['none, where it goes on the day it was said to', 'handed-to-carrier', '2026-12-10', null, false],
  ] as [string, StartEvent, string, string | null, boolean?][])(
    'are %s',
    (_, startEvent, again, to, wasAway = true) => {
      const startsOn = day('2026-12-10');
      expect(detour({ startEvent, wasAway, startsOn, again: day(again) })).toEqual(
        to && { from: startsOn, to, isByMistake: !wasAway },
      );
    },
  );
});
