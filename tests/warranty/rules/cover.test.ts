import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { countCover, coverEnd, lastClaimDay, lastGraceDay, originalEnd } from '@/lib/warranty/rules/cover';
import { explainCount } from '@/lib/warranty/rules/cover-sentences';
import { HELD_RULES } from '@/lib/warranty/rules/terms';
import { ENGLAND, someLine, someTerms, stay } from '../made';

describe('the original end of a line', () => {
  it('does not count the day of the start event', () => {
    expect(originalEnd(someLine({ startsOn: day('2026-12-03'), term: 'P12M' }))).toBe('2027-12-03');
  });

  it('is the last day of a month that lacks the date', () => {
    expect(originalEnd(someLine({ startsOn: day('2025-08-31'), term: 'P6M' }))).toBe('2026-02-28');
  });

  it('is refused for a term that is no period', () => {
    expect(() => originalEnd(someLine({ term: '12 months' }))).toThrow(RangeError);
  });
});

const whole = someTerms({ heldRule: 'whole-days' });

describe('the end of a line', () => {
  it('moves by the days held while it ran', () => {
    const line = someLine({ startsOn: day('2026-01-15') });
    expect(coverEnd(line, [stay('2026-07-01', '2026-07-21')], whole)).toBe('2027-02-04');
  });

  it('stays where it is when the policy gives no days back', () => {
    const line = someLine({ startsOn: day('2026-01-15') });
    expect(coverEnd(line, [stay('2026-07-01', '2026-07-21')], someTerms({ heldRule: 'none' }))).toBe(
      '2027-01-15',
    );
  });

  // Common practice, no source.
  it.each(HELD_RULES)(
    'moves by the days that its start was recorded too early by mistake, under %s',
    (heldRule) => {
      const line = someLine({ startsOn: day('2026-11-25') });
      const mistake = { ...stay('2026-11-25', '2026-11-28'), isByMistake: true };
      expect(coverEnd(line, [mistake], someTerms({ heldRule }))).toBe('2027-11-28');
      expect(coverEnd(line, [stay('2026-11-25', '2026-11-28')], someTerms({ heldRule }))).toBe(
        heldRule === 'whole-days' ? '2027-11-28' : '2027-11-25',
      );
      // A line of a later start never stood on that mistake, and what follows on it is a stay as any other.
      const later = someLine({ startsOn: day('2026-11-27') });
      expect(coverEnd(later, [mistake], someTerms({ heldRule: 'none' }))).toBe('2027-11-27');
      expect(coverEnd(line, [mistake, stay('2026-11-28', '2026-12-02')], someTerms({ heldRule }))).toBe(
        heldRule === 'whole-days' ? '2027-12-02' : '2027-11-28',
      );
    },
  );

  it('is not moved by days held before the line began', () => {
    const line = someLine({ startsOn: day('2026-07-21') });
    expect(coverEnd(line, [stay('2026-07-01', '2026-07-21')], whole)).toBe('2027-07-21');
  });

  it('is moved only by the part of a stay after the line began, as when cover starts at the carrier', () => {
    const line = someLine({ startsOn: day('2026-07-18') });
    expect(coverEnd(line, [stay('2026-07-01', '2026-07-21')], whole)).toBe('2027-07-21');
  });

  it('is not moved by a stay that began after it', () => {
    const line = someLine({ startsOn: day('2026-01-15') });
    expect(coverEnd(line, [stay('2027-01-16', '2027-02-16')], whole)).toBe('2027-01-15');
  });

  it('reaches the day of the return when the unit was handed in on the last day', () => {
    const line = someLine({ startsOn: day('2026-01-15') });
    expect(coverEnd(line, [stay('2027-01-15', '2027-02-01')], whole)).toBe('2027-02-01');
  });

  it('is moved by a second stay that only the first one brought inside', () => {
    const line = someLine({ startsOn: day('2026-01-15') });
    const stays = [stay('2026-07-01', '2026-07-21'), stay('2027-02-01', '2027-02-11')];
    expect(coverEnd(line, stays, whole)).toBe('2027-02-14');
  });

  it('is the renewed minimum where that is later', () => {
    expect(coverEnd(someLine({ renewedUntil: day('2028-02-18') }), [], whole)).toBe('2028-02-18');
  });

  describe('under a renewed minimum', () => {
    // 90 days from 20 November 2027: 10 in November, 31, 31, and 18 in February.
    const line = someLine({ renewedUntil: day('2028-02-18'), renewedFrom: day('2027-11-20') });
    const first = stay('2027-11-10', '2027-11-20');

    it('moves by the days held since it was counted', () => {
      expect(coverEnd(line, [first, stay('2028-01-05', '2028-01-25')], whole)).toBe('2028-03-09');
      expect(coverEnd(line, [first, stay('2028-01-05', '2028-01-25')], someTerms({ heldRule: 'none' }))).toBe(
        '2028-02-18',
      );
      expect(coverEnd(line, [first, stay('2028-02-19', '2028-03-19')], whole)).toBe('2028-02-18');
    });

    it.each(HELD_RULES)(
      'moves with the return, when the parcel came back and left again, under %s',
      (heldRule) => {
        expect(coverEnd(line, [stay('2027-11-10', '2027-11-24')], someTerms({ heldRule }))).toBe(
          '2028-02-22',
        );
      },
    );
  });

  it.each(HELD_RULES)(
    'is a renewed minimum that had ended before it was counted, not moved by that stay, under %s',
    (heldRule) => {
      const line = someLine({
        startsOn: day('2025-01-10'),
        renewedUntil: day('2026-02-18'),
        renewedFrom: day('2026-03-19'),
      });
      const stays = [stay('2026-02-19', '2026-03-25')];
      expect(coverEnd(line, stays, someTerms({ heldRule }))).toBe('2026-02-18');
    },
  );

  // Line kept before the day it was counted from was: the words of its paper stand.
  it('is the renewed minimum as it was written, where nobody kept the day it was counted from', () => {
    const line = someLine({ renewedUntil: day('2028-02-18') });
    expect(coverEnd(line, [stay('2028-01-05', '2028-01-25')], whole)).toBe('2028-02-18');
  });

  it('is the term where the renewed minimum is earlier', () => {
    expect(coverEnd(someLine({ renewedUntil: day('2027-06-01') }), [], whole)).toBe('2027-12-03');
  });
});

describe('the last day to open a claim', () => {
  const rolled = [
    { name: 'a Thursday stays', end: '2026-12-03', last: '2026-12-03' },
    { name: 'a Saturday moves to Monday', end: '2027-01-16', last: '2027-01-18' },
    { name: 'a Sunday moves to Monday', end: '2027-12-12', last: '2027-12-13' },
    {
      name: 'Boxing Day on a Saturday moves over its substitute to Tuesday',
      end: '2026-12-26',
      last: '2026-12-29',
    },
    { name: 'Good Friday moves over Easter Monday to Tuesday', end: '2027-03-26', last: '2027-03-30' },
  ];
  it.each(rolled)('$name', ({ end, last }) => {
    expect(lastClaimDay(day(end), someTerms({ rollLastDay: true }), ENGLAND)).toBe(last);
  });

  it('stays the day that was stated, when the day before it became a working day since', () => {
    // Stated for Sunday 12 December 2027 while Monday was a closing day; in England's own calendar that Monday is worked.
    const line = someLine({ startsOn: day('2026-12-12'), statedClaimDay: day('2027-12-14') });
    const count = countCover(line, [], someTerms({ graceDays: 2 }), ENGLAND);
    expect([count.end, count.lastClaimDay, count.lastGraceDay]).toEqual([
      '2027-12-12',
      '2027-12-14',
      '2027-12-16',
    ]);
    // Ten days given back since count for more than the paper.
    const later = countCover(line, [stay('2027-05-01', '2027-05-11')], someTerms(), ENGLAND);
    expect([later.end, later.lastClaimDay]).toEqual(['2027-12-22', '2027-12-22']);
  });

  it('is the end itself when the policy does not roll', () => {
    expect(lastClaimDay(day('2026-12-26'), someTerms({ rollLastDay: false }), ENGLAND)).toBe('2026-12-26');
  });

  it('is followed by the days of grace, counted from the rolled day and by the calendar', () => {
    expect(lastGraceDay(day('2026-12-26'), someTerms({ graceDays: 14 }), ENGLAND)).toBe('2027-01-12');
  });

  it('is also the last day of grace where there is none', () => {
    expect(lastGraceDay(day('2026-12-26'), someTerms({ graceDays: 0 }), ENGLAND)).toBe('2026-12-29');
  });
});

describe('the count in words', () => {
  const explained = (line = someLine(), stays = [stay('2027-05-01', '2027-05-01')], terms = whole) =>
    explainCount(countCover(line, stays, terms, ENGLAND), 'en-GB');

  it('says term, start, days given back, end and the later day for a claim', () => {
    expect(explained(someLine(), [stay('2027-05-01', '2027-05-10')])).toBe(
      '12 months from 3 Dec 2026, plus 9 days while it was out of your hands, ends 12 Dec 2027; a claim can still be opened until Monday 13 December 2027',
    );
  });

  it('says only what happened', () => {
    expect(explained()).toBe('12 months from 3 Dec 2026 ends 3 Dec 2027');
  });

  it('says one day in the singular', () => {
    expect(explained(someLine(), [stay('2027-05-01', '2027-05-02')], someTerms({ rollLastDay: false }))).toBe(
      '12 months from 3 Dec 2026, plus 1 day while it was out of your hands, ends 4 Dec 2027',
    );
  });

  it('says that a covered claim made it longer', () => {
    expect(explained(someLine({ renewedUntil: day('2028-02-18') }))).toBe(
      '12 months from 3 Dec 2026, made longer after a covered claim, ends 18 Feb 2028',
    );
  });

  it('does not say so when the renewed minimum lies before the end', () => {
    expect(explained(someLine({ renewedUntil: day('2027-11-18') }))).toBe(
      '12 months from 3 Dec 2026 ends 3 Dec 2027',
    );
  });
});
