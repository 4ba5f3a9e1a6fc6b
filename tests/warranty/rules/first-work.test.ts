import { describe, expect, it } from 'vitest';
import { type FirstFacts, firstWork } from '@/lib/warranty/rules/first-work';

const booked = {
  name: 'USB-C socket replaced',
  formerNames: ['Socket replaced'],
  symptoms: ['Does not charge'],
  before: [],
  beside: [],
};
const FACTS: FirstFacts = {
  booked,
  paid: [],
  known: new Map([
    ['USB-C socket replaced', ['Does not charge']],
    ['Fader replaced', ['A fader scratches']],
  ]),
  uses: [],
};
const paid = (description: string, kind: 'labour' | 'part' | 'postage' = 'labour', amount = 2400) => ({
  kind,
  description,
  amount,
});
const worksOf = (over: Partial<FirstFacts>) =>
  firstWork({ ...FACTS, ...over }).covered.map(({ id, description, symptoms }) => [
    id,
    description,
    symptoms,
  ]);

describe('the work of a first certificate', () => {
  it.each<[string, Partial<FirstFacts>, unknown[]]>([
    [
      'is the booked repair once, whatever was charged beside it',
      { paid: [paid('USB-C socket replaced'), paid('Parcel to you', 'postage')] },
      [['work-1', 'USB-C socket replaced', ['Does not charge']]],
    ],
    [
      'has a line for the labour that a changed price added',
      { paid: [paid('USB-C socket replaced'), paid('Two pads rebuilt'), paid('Fader replaced')] },
      [
        ['work-1', 'USB-C socket replaced', ['Does not charge']],
        ['work-2', 'Two pads rebuilt', ['Has failed again: Two pads rebuilt']],
        ['work-3', 'Fader replaced', ['A fader scratches']],
      ],
    ],
    [
      'is what took the booked repair’s place in the price',
      { paid: [paid('Socket and trace rebuilt'), paid('Ground pad rebuilt')] },
      [
        ['work-1', 'Socket and trace rebuilt', ['Does not charge']],
        ['work-2', 'Ground pad rebuilt', ['Does not charge']],
      ],
    ],
    [
      'names the repair before for what it is claimed for, where both were agreed to in words of its own',
      {
        booked: { ...booked, beside: ['Fader replaced', 'Slider replaced'] },
        paid: [paid('Slider and its track rebuilt'), paid('USB-C socket replaced')],
      },
      [
        ['work-1', 'Slider and its track rebuilt', ['A fader scratches']],
        ['work-2', 'USB-C socket replaced', ['Does not charge']],
      ],
    ],
    [
      'keeps other words apart, where the repair before has a line',
      {
        booked: { ...booked, beside: ['Fader replaced'] },
        paid: [paid('Fader replaced'), paid('Two pads rebuilt'), paid('USB-C socket replaced')],
      },
      [
        ['work-1', 'Fader replaced', ['A fader scratches']],
        ['work-2', 'Two pads rebuilt', ['Has failed again: Two pads rebuilt']],
        ['work-3', 'USB-C socket replaced', ['Does not charge']],
      ],
    ],
    [
      'is the booked repair under the name it had when it was booked',
      { paid: [paid('Socket replaced'), paid('Fader replaced')] },
      [
        ['work-1', 'Socket replaced', ['Does not charge']],
        ['work-2', 'Fader replaced', ['A fader scratches']],
      ],
    ],
    [
      'is the repair of that name today, where another had it before',
      {
        paid: [paid('USB-C socket replaced'), paid('Socket replaced')],
        known: new Map([['Socket replaced', ['Loose']]]),
      },
      [
        ['work-1', 'USB-C socket replaced', ['Does not charge']],
        ['work-2', 'Socket replaced', ['Loose']],
      ],
    ],
    [
      'is what was done, where the price was agreed for the repair the job was under before',
      {
        booked: { ...booked, before: ['Fader replaced'] },
        paid: [paid('Fader replaced'), paid('Two pads rebuilt')],
      },
      [
        ['work-1', 'USB-C socket replaced', ['Does not charge']],
        ['work-2', 'Two pads rebuilt', ['Has failed again: Two pads rebuilt']],
      ],
    ],
    [
      'is both, where the price names both',
      {
        booked: { ...booked, before: ['Fader replaced'] },
        paid: [paid('Fader replaced'), paid('USB-C socket replaced')],
      },
      [
        ['work-1', 'Fader replaced', ['A fader scratches']],
        ['work-2', 'USB-C socket replaced', ['Does not charge']],
      ],
    ],
    [
      'is in words that no repair has, beside a line of another repair',
      { paid: [paid('Fader replaced'), paid('Socket and trace rebuilt')] },
      [
        ['work-1', 'Fader replaced', ['A fader scratches']],
        ['work-2', 'Socket and trace rebuilt', ['Does not charge']],
      ],
    ],
    [
      'is the booked repair where its labour was given away',
      { paid: [paid('USB-C socket replaced', 'labour', 0)] },
      [['work-1', 'USB-C socket replaced', ['Does not charge']]],
    ],
    [
      'is what was paid for, and not the repair whose certificate did not cover it',
      { booked: null, paid: [paid('Fader replaced')] },
      [['work-1', 'Fader replaced', ['A fader scratches']]],
    ],
    [
      'is the part that was paid for, where labour was not',
      { booked: null, paid: [paid('Fader, 60 mm', 'part')] },
      [['work-1', 'Fader, 60 mm', ['Has failed again: Fader, 60 mm']]],
    ],
  ])('%s', (_name, over, expected) => {
    expect(worksOf(over)).toEqual(expected);
  });
});

describe('the parts of a first certificate', () => {
  const uses = [{ part: 'Fader, 60 mm', lotId: 'f', ownTerm: 'P6M' }];

  it('answer for the booked repair, and have their lots', () => {
    const { covered, lots } = firstWork({ ...FACTS, paid: [paid('USB-C socket replaced')], uses });
    expect(covered[1]).toEqual({
      id: 'part-1',
      kind: 'part',
      description: 'Fader, 60 mm',
      symptoms: ['Does not charge'],
      ownTerm: 'P6M',
    });
    expect([...lots]).toEqual([['part-1', 'f']]);
  });

  it('answer for the work that was paid for, where the certificate did not cover it', () => {
    const { covered } = firstWork({ ...FACTS, booked: null, paid: [paid('Fader replaced')], uses });
    expect(covered[1]?.symptoms).toEqual(['A fader scratches']);
  });
});
