import { describe, expect, it } from 'vitest';
import { type QuoteLine, revisionChanges } from '@/lib/quotes/rules/lines';

const line = (description: string, amount: number, kind: QuoteLine['kind'] = 'labour'): QuoteLine => ({
  kind,
  description,
  amount,
  category: 'S',
  rateBps: 2000,
});

describe('what differs between the agreed price and a new one', () => {
  it.each([
    {
      what: 'a line more',
      before: [line('A', 12_000)],
      after: [line('A', 12_000), line('B', 3500)],
      changes: [{ description: 'B', was: null, now: 3500 }],
    },
    {
      what: 'a line less',
      before: [line('A', 12_000), line('B', 3500)],
      after: [line('A', 12_000)],
      changes: [{ description: 'B', was: 3500, now: null }],
    },
    {
      what: 'another amount',
      before: [line('A', 4600)],
      after: [line('A', 6000)],
      changes: [{ description: 'A', was: 4600, now: 6000 }],
    },
    {
      what: 'two equal lines that became one at their sum, which is no change',
      before: [line('A', 100), line('A', 200)],
      after: [line('A', 300)],
      changes: [],
    },
    {
      what: 'the same words for another kind of line',
      before: [line('Socket', 2000, 'labour')],
      after: [line('Socket', 2000, 'part')],
      changes: [
        { description: 'Socket', was: 2000, now: null },
        { description: 'Socket', was: null, now: 2000 },
      ],
    },
    { what: 'nothing', before: [line('A', 4600)], after: [line('A', 4600)], changes: [] },
  ])('is $what', ({ before, after, changes }) => {
    expect(revisionChanges(before, after)).toEqual(changes);
  });
});
