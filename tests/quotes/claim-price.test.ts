import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type AskedRevision, answerToOffer } from '@/lib/quotes/rules/answer-to-offer';
import {
  COVERED_TOGETHER,
  coveredLines,
  OFFERED_KINDS,
  type QuoteLine,
  revisionTotals,
  shownLines,
  splitCovered,
} from '@/lib/quotes/rules/lines';

const WORK: QuoteLine = {
  kind: 'labour',
  description: 'USB-C socket replaced',
  amount: 7200,
  category: 'S',
  rateBps: 2000,
};
const PADS: QuoteLine = { ...WORK, description: 'Two pads rebuilt', amount: 2400 };
const COVERED = coveredLines(WORK, 'W-4K7Q-X29D');

describe('the price of a claim', () => {
  it('is split into what is covered and what is paid', () => {
    expect(splitCovered([...COVERED, PADS])).toEqual({ covered: COVERED, paid: [PADS] });
    expect(splitCovered(COVERED)).toEqual({ covered: COVERED, paid: [] });
    expect(splitCovered([WORK, PADS])).toEqual({ covered: [], paid: [WORK, PADS] });
    expect(splitCovered([])).toEqual({ covered: [], paid: [] });
  });

  it('counts as paid as a whole where the cover is not all of the work', () => {
    const half = { ...WORK, kind: 'cover', amount: -3600 } as const;
    expect(splitCovered([WORK, half])).toEqual({ covered: [], paid: [WORK, half] });
  });

  it('shows that the covered part costs nothing, beside what does', () => {
    expect(shownLines([...COVERED, PADS])).toEqual([
      { description: 'USB-C socket replaced', amount: 7200 },
      { description: 'Covered by certificate W-4K7Q-X29D', amount: -7200 },
      { description: COVERED_TOGETHER, amount: 0 },
      { description: 'Two pads rebuilt', amount: 2400 },
    ]);
    expect(shownLines([WORK])).toEqual([{ description: 'USB-C socket replaced', amount: 7200 }]);
  });

  it('comes to what is paid, with or without tax, whatever was covered', () => {
    const amount = fc.integer({ min: 1, max: 5_000_000 });
    fc.assert(
      fc.property(amount, fc.array(amount, { maxLength: 5 }), fc.boolean(), (work, paid, isGross) => {
        const rest = paid.map((each) => ({ ...PADS, amount: each }));
        const whole = [...coveredLines({ ...WORK, amount: work }, 'W-4K7Q-X29D'), ...rest];
        expect(revisionTotals(whole, isGross).gross).toBe(revisionTotals(rest, isGross).gross);
        expect(revisionTotals(splitCovered(whole).covered, isGross).gross).toBe(0);
        expect(shownLines(whole).reduce((sum, line) => sum + line.amount, 0)).toBe(
          paid.reduce((sum, each) => sum + each, 0),
        );
      }),
    );
  });

  it('is never covered by a line that a person writes', () => {
    expect(OFFERED_KINDS).not.toContain('cover');
    expect(OFFERED_KINDS).toContain('labour');
  });
});

describe('what became of an offered price', () => {
  const RULED = new Date('2027-02-08T10:00:00Z');
  const BEFORE = new Date('2027-02-01T10:00:00Z');
  const AFTER = new Date('2027-02-09T10:00:00Z');
  const booked: AskedRevision = {
    state: 'accepted',
    grossMinor: 0,
    decidedAt: BEFORE,
    lines: [{ kind: 'labour' }, { kind: 'cover' }],
  };
  const offer = (state: string, grossMinor: number, decidedAt: Date | null = AFTER): AskedRevision => ({
    state,
    grossMinor,
    decidedAt: state === 'sent' ? null : decidedAt,
    lines: [{ kind: 'labour' }],
  });
  const fee: AskedRevision = { ...offer('accepted', 0), lines: [{ kind: 'return-fee' }] };

  it.each([
    ['nothing was offered', [booked], null],
    ['one waits', [booked, offer('sent', 2400)], { answer: 'waiting', gross: 2400 }],
    ['one was agreed', [booked, offer('accepted', 2400)], { answer: 'accepted', gross: 2400 }],
    ['one was declined', [booked, offer('declined', 2400)], { answer: 'declined', gross: 2400 }],
    [
      'declined, and the unit goes back for a fee',
      [booked, offer('declined', 2400), fee],
      { answer: 'declined', gross: 2400 },
    ],
    [
      'agreed, and a second one declined',
      [booked, offer('accepted', 2400), offer('declined', 900)],
      { answer: 'accepted', gross: 2400 },
    ],
    [
      'declined, and a second one waits',
      [booked, offer('declined', 2400), offer('sent', 1800)],
      { answer: 'waiting', gross: 1800 },
    ],
    [
      'agreed before the ruling that counts, and it stands',
      [booked, offer('accepted', 6000, BEFORE)],
      { answer: 'accepted', gross: 6000 },
    ],
    ['replaced before it was answered', [booked, offer('replaced', 2400, null)], null],
    ['declined before the ruling that counts', [booked, offer('declined', 2400, BEFORE)], null],
  ])('%s', (_name, revisions, expected) => {
    expect(answerToOffer(revisions, RULED)).toEqual(expected);
  });
});
