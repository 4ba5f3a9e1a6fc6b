import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { renewCover } from '@/lib/warranty/rules/renew';
import type { CoverLine, HeldInterval, PolicyTerms } from '@/lib/warranty/rules/terms';
import { someLine, someTerms, stay } from '../made';

const socket = someLine({ id: 'usb' });
const pot = someLine({ id: 'pot', kind: 'part', description: 'Volume pot', symptoms: ['crackles'] });

function renewed(o: {
  lines?: CoverLine[];
  touched: string[];
  added?: CoverLine[];
  before?: HeldInterval[];
  now: HeldInterval;
  terms?: Partial<PolicyTerms>;
}) {
  return renewCover({
    lines: o.lines ?? [socket, pot],
    touched: o.touched,
    added: o.added ?? [],
    heldBefore: o.before ?? [],
    heldNow: o.now,
    terms: someTerms(o.terms),
  });
}

describe('the cover lines of the next revision', () => {
  it('a touched line close to its end runs on for the renewed minimum from the return day', () => {
    const { endings } = renewed({ touched: ['usb'], now: stay('2027-11-10', '2027-11-20') });
    expect(endings).toEqual([
      { lineId: 'usb', was: '2027-12-03', now: '2028-02-18' },
      { lineId: 'pot', was: '2027-12-03', now: '2027-12-13' },
    ]);
  });

  it('a touched line with more left than the minimum keeps what is left, with its days given back', () => {
    const { endings } = renewed({ touched: ['usb'], now: stay('2027-02-01', '2027-02-11') });
    expect(endings[0]).toEqual({ lineId: 'usb', was: '2027-12-03', now: '2027-12-13' });
  });

  it('starts, terms and the order of lines stay as they were', () => {
    const { lines } = renewed({ touched: ['usb', 'pot'], now: stay('2027-11-10', '2027-11-20') });
    expect(lines.map(({ id, startsOn, term }) => [id, startsOn, term])).toEqual([
      ['usb', '2026-12-03', 'P12M'],
      ['pot', '2026-12-03', 'P12M'],
    ]);
  });

  it('without a renewed minimum a touched line keeps only what is left', () => {
    const { lines, endings } = renewed({
      touched: ['usb'],
      now: stay('2027-11-10', '2027-11-20'),
      terms: { renewedMinimum: null },
    });
    expect(lines[0]?.renewedUntil).toBeNull();
    expect(endings[0]?.now).toBe('2027-12-13');
  });

  it('a second covered claim counts the minimum from its own return day', () => {
    const first = renewed({ touched: ['usb'], now: stay('2027-11-10', '2027-11-20') });
    const second = renewed({
      lines: first.lines,
      touched: ['usb'],
      before: [stay('2027-11-10', '2027-11-20')],
      now: stay('2028-02-01', '2028-02-11'),
    });
    // 18 February 2028 plus 10 days held is 28 February; 90 days from 11 February are 11 May (2028 is a leap year).
    expect(second.endings[0]).toEqual({ lineId: 'usb', was: '2028-02-18', now: '2028-05-11' });
  });

  it('an earlier renewed minimum is paused while the unit is with us for something else', () => {
    const { lines, endings, hasChanged } = renewed({
      lines: [someLine({ renewedUntil: day('2028-02-18'), renewedFrom: day('2027-11-20') }), pot],
      touched: [],
      before: [stay('2027-11-10', '2027-11-20')],
      now: stay('2028-02-01', '2028-02-11'),
    });
    expect(lines[0]?.renewedUntil).toBe('2028-02-28');
    expect(endings[0]).toEqual({ lineId: 'usb', was: '2028-02-18', now: '2028-02-28' });
    expect(hasChanged).toBe(true);
  });

  it('an earlier renewed minimum keeps the days of a stay between, which issued no revision', () => {
    // As above, and held 10 days from 5 January: 28 February and 10 days, in a leap year, are 9 March.
    const { endings } = renewed({
      lines: [someLine({ renewedUntil: day('2028-02-18'), renewedFrom: day('2027-11-20') })],
      touched: [],
      before: [stay('2027-11-10', '2027-11-20'), stay('2028-01-05', '2028-01-15')],
      now: stay('2028-02-01', '2028-02-11'),
    });
    expect(endings[0]).toEqual({ lineId: 'usb', was: '2028-02-28', now: '2028-03-09' });
  });

  it('a unit handed in on the last day of its renewed minimum is covered to the day of its return', () => {
    const line = someLine({
      startsOn: day('2025-01-10'),
      renewedUntil: day('2026-02-18'),
      renewedFrom: day('2025-11-20'),
    });
    const { lines } = renewed({ lines: [line], touched: [], now: stay('2026-02-18', '2026-03-01') });
    expect(lines[0]?.renewedUntil).toBe('2026-03-01');
  });

  it('a renewed minimum that was over before the unit was handed in is not revived', () => {
    const ended = someLine({
      startsOn: day('2025-01-10'),
      renewedUntil: day('2026-02-18'),
      renewedFrom: day('2025-11-20'),
    });
    const { lines } = renewed({ lines: [ended], touched: [], now: stay('2026-02-19', '2026-03-19') });
    expect(lines[0]?.renewedUntil).toBe('2026-02-18');
  });

  it('a line let in during its days of grace and put right runs on for the minimum', () => {
    const ended = someLine({ startsOn: day('2025-12-03') });
    const { endings } = renewed({
      lines: [ended],
      touched: ['usb'],
      now: stay('2026-12-10', '2026-12-20'),
    });
    // 90 days from 20 December 2026: 11 in December, 31, 28, and 20 in March.
    expect(endings[0]).toEqual({ lineId: 'usb', was: '2026-12-03', now: '2027-03-20' });
  });

  it('a claim that was not covered changes no stored line, the days come from the stay itself', () => {
    const { hasChanged, endings } = renewed({ touched: [], now: stay('2027-02-01', '2027-02-11') });
    expect(hasChanged).toBe(false);
    expect(endings.map(({ now }) => now)).toEqual(['2027-12-13', '2027-12-13']);
  });

  it('work that is new on the claim gets its own line with its own start', () => {
    const added = someLine({ id: 'trace', description: 'Trace rebuilt', startsOn: day('2027-11-18') });
    const { lines, endings, hasChanged } = renewed({
      touched: ['usb'],
      added: [added],
      now: stay('2027-11-10', '2027-11-20'),
    });
    expect(lines.map(({ id }) => id)).toEqual(['usb', 'pot', 'trace']);
    // It left us on the 18th and arrived on the 20th: those two days were not in the customer's hands.
    expect(endings[2]).toEqual({ lineId: 'trace', was: null, now: '2028-11-20' });
    expect(hasChanged).toBe(true);
  });

  it('under the two-months rule only the line that was put right gets the floor', () => {
    const { endings } = renewed({
      touched: ['usb'],
      now: stay('2027-11-10', '2027-11-20'),
      terms: { heldRule: 'two-months-from-return', renewedMinimum: null },
    });
    expect(endings.map(({ now }) => now)).toEqual(['2028-01-20', '2027-12-03']);
  });

  it('under the two-months rule a longer renewed minimum wins', () => {
    const { endings } = renewed({
      touched: ['usb'],
      now: stay('2027-11-10', '2027-11-20'),
      terms: { heldRule: 'two-months-from-return' },
    });
    expect(endings[0]?.now).toBe('2028-02-18');
  });

  it('an unknown line is refused by its id', () => {
    expect(() => renewed({ touched: ['fader'], now: stay('2027-11-10', '2027-11-20') })).toThrow(/fader/);
  });

  it('a new line under an id in use is refused', () => {
    expect(() =>
      renewed({ touched: [], added: [someLine({ id: 'pot' })], now: stay('2027-11-10', '2027-11-20') }),
    ).toThrow(/pot/);
  });
});
