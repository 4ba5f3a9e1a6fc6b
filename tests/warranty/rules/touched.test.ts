import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { CoverLine, PolicyTerms } from '@/lib/warranty/rules/terms';
import { touchedLines } from '@/lib/warranty/rules/touched';
import { ENGLAND, someLine, someTerms } from '../made';

// Sent on Tuesday 1 September 2026: 30 days end on Thursday 1 October, 90 on Monday 30 November (29 + 31 + 30).
const from = { startsOn: day('2026-09-01') };
const work = someLine({ id: 'work-1', term: 'P30D', symptoms: ['no power'], ...from });
const part = someLine({ id: 'part-1', kind: 'part', term: 'P90D', symptoms: ['no power'], ...from });
const fader = someLine({ id: 'work-2', term: 'P90D', symptoms: ['fader scratches'], ...from });

function touched(o: {
  lines?: CoverLine[];
  symptom?: string;
  openedOn: string;
  isLetIn?: boolean;
  fittedAgain?: string[];
  named?: string[] | null;
  terms?: Partial<PolicyTerms>;
}) {
  return touchedLines({
    lines: o.lines ?? [work, part, fader],
    symptom: o.symptom ?? 'no power',
    openedOn: day(o.openedOn),
    isLetIn: o.isLetIn ?? false,
    fittedAgain: o.fittedAgain ?? [],
    named: o.named ?? null,
    held: [],
    terms: someTerms({ graceDays: 7, rollLastDay: true, ...o.terms }),
    calendar: ENGLAND,
  });
}

describe('the lines that a covered claim renews', () => {
  test('are those of its symptom that still ran when it was opened', () => {
    expect(touched({ openedOn: '2026-10-01' })).toEqual(['work-1', 'part-1']);
    expect(touched({ openedOn: '2026-10-31' })).toEqual(['part-1']);
  });

  test('hold a line whose last day was moved, and one in grace only where a person had to let the claim in', () => {
    // Ends on Saturday 26 December 2026 and can be claimed until Tuesday the 29th, see boxing-day.ts.
    const saturday = someLine({
      id: 'work-3',
      symptoms: ['no power'],
      term: 'P25D',
      startsOn: day('2026-12-01'),
    });
    expect(touched({ lines: [saturday, fader], openedOn: '2026-12-29' })).toEqual(['work-3']);
    expect(touched({ lines: [saturday, fader], openedOn: '2027-01-04' })).toEqual(['work-3']);
    expect(touched({ openedOn: '2026-10-05' })).toEqual(['part-1']);
  });

  test('hold a part that was fitted again, whether its line ran or not', () => {
    const symptom = 'fader scratches';
    expect(touched({ symptom, openedOn: '2026-11-02', fittedAgain: ['part-1'] })).toEqual([
      'work-2',
      'part-1',
    ]);
    expect(touched({ openedOn: '2026-12-02', terms: { graceDays: 0 }, fittedAgain: ['part-1'] })).toEqual([
      'part-1',
    ]);
  });

  test('are those that had ended where the owner let the claim in, and never beside one that still could be claimed', () => {
    // The part's grace ends on Monday 7 December.
    expect(touched({ openedOn: '2026-12-08' })).toEqual([]);
    expect(touched({ openedOn: '2026-12-08', isLetIn: true })).toEqual(['work-1', 'part-1']);
    expect(touched({ openedOn: '2026-12-07', isLetIn: true })).toEqual(['part-1']);
    expect(touched({ openedOn: '2026-10-31', isLetIn: true })).toEqual(['part-1']);
  });

  test('are those that were named, and a naming of nothing stands only beside a part that was fitted again', () => {
    expect(touched({ openedOn: '2026-10-01', named: ['work-2'] })).toEqual(['work-2']);
    expect(touched({ openedOn: '2026-10-01', named: [], fittedAgain: ['part-1'] })).toEqual(['part-1']);
    // The part was put back into stock since.
    expect(touched({ openedOn: '2026-10-01', named: [] })).toEqual(['work-1', 'part-1']);
  });

  describe('where the customer chose something else', () => {
    const symptom = 'other';
    test('are the part that was fitted again and the work on it', () => {
      expect(touched({ symptom, openedOn: '2026-09-20', fittedAgain: ['part-1'] })).toEqual([
        'work-1',
        'part-1',
      ]);
      expect(touched({ symptom, openedOn: '2026-10-31', fittedAgain: ['part-1'] })).toEqual(['part-1']);
    });
    test('are the work that still ran, where nothing was replaced', () => {
      expect(touched({ symptom, openedOn: '2026-10-31' })).toEqual(['work-2']);
      expect(touched({ symptom, openedOn: '2026-10-31', lines: [part] })).toEqual(['part-1']);
    });
  });
});
