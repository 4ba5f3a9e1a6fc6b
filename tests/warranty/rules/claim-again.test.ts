import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { claimAgain } from '@/lib/warranty/rules/claim-again';
import type { HeldInterval } from '@/lib/warranty/rules/terms';
import { ENGLAND, someLine, someTerms, stay } from '../made';

/** Until Friday 3 December 2027, with 14 days of grace until the 17th. */
const socket = someLine();
/** Until Monday 20 December 2027. */
const screen = someLine({ id: 'screen', symptoms: ['dark'], startsOn: day('2026-12-20') });
const again = (
  today: string,
  { lines = [socket, screen], symptom = 'does not charge', held = [] as HeldInterval[] } = {},
) => claimAgain({ lines, symptom, today: day(today) }, { held, terms: someTerms(), calendar: ENGLAND });

// Counted by hand: the end by Regulation 1182/71 Art. 3 as for every line; the grace is the workshop's own (common practice, no source).
describe('a fault that was claimed once', () => {
  it.each([
    ['can be claimed again through the last day', '2027-12-03', '2027-12-03', null],
    ['goes to a person on the day after it', '2027-12-04', null, '2027-12-17'],
    ['and on the last day of grace', '2027-12-17', null, '2027-12-17'],
    ['and to nobody after that', '2027-12-18', null, null],
  ])('%s', (_name, today, until, lateUntil) => {
    expect(again(today)).toEqual({ endsOn: '2027-12-03', until, lateUntil });
  });

  it.each([
    ['something else', 'other'],
    ['what no line names', 'smells of smoke'],
  ])('counts by the line that lasts longest for %s, wherever it stands', (_name, symptom) => {
    for (const lines of [
      [socket, screen],
      [screen, socket],
    ])
      expect(again('2027-12-10', { lines, symptom })).toEqual({
        endsOn: '2027-12-20',
        until: '2027-12-20',
        lateUntil: null,
      });
  });

  it('can be claimed until the day that a weekend and a holiday moved it to', () => {
    const lines = [someLine({ startsOn: day('2025-12-26') })];
    expect(again('2026-12-28', { lines })).toEqual({
      endsOn: '2026-12-26',
      until: '2026-12-29',
      lateUntil: null,
    });
  });

  it('has the days given back that the unit was here', () => {
    const held = [stay('2027-05-01', '2027-05-11')];
    expect(again('2027-12-13', { held })).toMatchObject({ endsOn: '2027-12-13', until: '2027-12-13' });
  });

  it('is refused of a certificate without a line', () => {
    expect(() => again('2027-12-01', { lines: [] })).toThrow(RangeError);
  });
});
