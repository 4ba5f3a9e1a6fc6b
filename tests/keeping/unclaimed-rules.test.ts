import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, compareDays, type Day, day } from '@/lib/calendar/day';
import {
  DECISIONS,
  decisionWords,
  GONE_FOR_GOOD,
  mayDecide,
  type UnclaimedFacts,
  type UnclaimedStep,
  unclaimedStep,
} from '@/lib/jobs/rules/unclaimed';

const settings = { afterDays: 21, everyDays: 21, notices: 3 };
const told = day('2026-11-02');
const FACTS: UnclaimedFacts = { toldOn: told, sentOn: [], keptUntil: null };
const on = (text: string, over: Partial<UnclaimedFacts> = {}) =>
  unclaimedStep({ ...FACTS, ...over }, settings, day(text));
const first = day('2026-11-23');
const second = day('2026-12-14');
const third = day('2027-01-04');

// Intervals are the workshop's own; counted by hand on the calendar. Common practice, no source.
describe('what is due about a unit that nobody fetches', () => {
  it.each<[string, string, Partial<UnclaimedFacts>, UnclaimedStep]>([
    ['nothing before the first notice', '2026-11-22', {}, { step: 'wait', until: first }],
    [
      'the first notice after 21 days',
      '2026-11-23',
      {},
      { step: 'notice', notice: 1, lastDay: day('2026-12-13'), isLast: false },
    ],
    [
      'a round that comes late gives the full time',
      '2026-12-01',
      {},
      { step: 'notice', notice: 1, lastDay: day('2026-12-21'), isLast: false },
    ],
    ['nothing on the last day to answer', '2026-12-13', { sentOn: [first] }, { step: 'wait', until: second }],
    [
      'the second the day after it',
      '2026-12-14',
      { sentOn: [first] },
      { step: 'notice', notice: 2, lastDay: day('2027-01-03'), isLast: false },
    ],
    [
      'the third is the last',
      '2027-01-04',
      { sentOn: [first, second] },
      { step: 'notice', notice: 3, lastDay: day('2027-01-24'), isLast: true },
    ],
    [
      'nobody decides while the last notice runs',
      '2027-01-24',
      { sentOn: [first, second, third] },
      { step: 'wait', until: day('2027-01-25') },
    ],
    [
      'then the owner decides',
      '2027-01-25',
      { sentOn: [first, second, third] },
      { step: 'decide', since: day('2027-01-25') },
    ],
    [
      'kept longer, nobody is asked before',
      '2027-02-28',
      { sentOn: [first, second, third], keptUntil: day('2027-02-28') },
      { step: 'wait', until: day('2027-03-01') },
    ],
    [
      'and the owner is asked again after it',
      '2027-03-01',
      { sentOn: [first, second, third], keptUntil: day('2027-02-28') },
      { step: 'decide', since: day('2027-01-25') },
    ],
    ['somebody who was not told gets no notice', '2027-06-01', { toldOn: null }, { step: 'none' }],
  ])('%s', (_name, today, over, expected) => {
    expect(on(today, over)).toEqual(expected);
  });

  it('sends nothing where notices are turned off, and lets those already sent run out', () => {
    const off = { ...settings, notices: 0 };
    expect(unclaimedStep(FACTS, off, day('2027-06-01'))).toEqual({ step: 'none' });
    const sent = { ...FACTS, sentOn: [first] };
    expect(unclaimedStep(sent, off, day('2026-12-13'))).toEqual({ step: 'wait', until: second });
    expect(unclaimedStep(sent, off, day('2026-12-14'))).toEqual({ step: 'decide', since: second });
  });

  it('run day by day, sends each notice once, evenly, and then asks the owner', () => {
    const count = fc.integer({ min: 1, max: 6 });
    const days = fc.integer({ min: 1, max: 90 });
    fc.assert(
      fc.property(days, days, count, (afterDays, everyDays, notices) => {
        const sentOn: Day[] = [];
        let today = told;
        for (;;) {
          const step = unclaimedStep(
            { toldOn: told, sentOn, keptUntil: null },
            { afterDays, everyDays, notices },
            today,
          );
          if (step.step === 'decide') break;
          if (step.step === 'notice') {
            expect(step.notice).toBe(sentOn.length + 1);
            expect(compareDays(step.lastDay, today)).toBeGreaterThanOrEqual(0);
            sentOn.push(today);
          }
          today = addDays(today, 1);
        }
        expect(sentOn).toEqual(
          Array.from({ length: notices }, (_, index) => addDays(told, afterDays + index * everyDays)),
        );
        expect(today).toBe(addDays(told, afterDays + notices * everyDays));
      }),
      { numRuns: 50 },
    );
  });
});

describe('what the owner may decide', () => {
  // Local law asks that whoever had it is told first; which law is the workshop's to know. Common practice, no source.
  it('is everything once the last notice arrived, or they were told some other way', () => {
    for (const decision of DECISIONS) {
      expect(mayDecide(decision, { isReached: true, isToldOtherwise: false })).toBe(true);
      expect(mayDecide(decision, { isReached: false, isToldOtherwise: true })).toBe(true);
    }
  });

  it('is nothing that loses the unit to somebody who was not told', () => {
    const untold = { isReached: false, isToldOtherwise: false };
    expect(DECISIONS.filter((decision) => !mayDecide(decision, untold))).toEqual(GONE_FOR_GOOD);
    expect(GONE_FOR_GOOD).toEqual(['give-away', 'recycle', 'sell']);
  });

  it('speaks of money to pay only where there is some', () => {
    const owed = decisionWords('send-back-unpaid', { isOwed: true });
    const paid = decisionWords('send-back-unpaid', { isOwed: false });
    expect(owed.told).toBe('We send your unit back to you, although there is still something to pay.');
    expect(paid.told).toBe('We send your unit back to you.');
    expect(paid.consequence).not.toMatch(/owed|amount/);
    for (const decision of DECISIONS.filter((each) => each !== 'send-back-unpaid'))
      expect(decisionWords(decision, { isOwed: false })).toEqual(decisionWords(decision, { isOwed: true }));
  });
});
