import { describe, expect, it } from 'vitest';
import { type AddedFacts, addedCover } from '@/lib/warranty/rules/added-cover';
import { relevantLines } from '@/lib/warranty/rules/standing';
import { someLine } from '../made';

const FACTS: AddedFacts = {
  before: [
    { id: 'work-1', kind: 'work', description: 'USB-C socket replaced' },
    { id: 'part-1', kind: 'part', description: 'USB-C socket, 16 pin' },
  ],
  uses: [],
  paid: [],
  repairSymptoms: ['Does not charge'],
  known: new Map([['Fader replaced', ['A fader scratches']]]),
};
const added = (over: Partial<AddedFacts>) => addedCover({ ...FACTS, ...over });
const paid = (description: string, kind: 'labour' | 'part' | 'postage' = 'labour', amount = 2400) => ({
  kind,
  description,
  amount,
});

describe('what a claim’s job adds to the certificate', () => {
  it('is nothing where the covered work was done again with the same part', () => {
    const { covered, lots, fittedAgain } = added({ uses: [{ part: 'USB-C socket, 16 pin', lotId: 'new' }] });
    expect(covered).toEqual([]);
    // Its line runs on whatever the claim was about.
    expect(fittedAgain).toEqual(['part-1']);
    // The part under the old line comes from another lot now.
    expect([...lots]).toEqual([['part-1', 'new']]);
  });

  it('is nothing where the same part was fitted again under a new name', () => {
    const before = [
      { id: 'part-1', kind: 'part', description: 'USB-C socket, 16 pin', partId: 's' },
    ] as const;
    const uses = [{ part: 'USB-C receptacle, 16 contacts', partId: 's', lotId: 'new' }];
    expect(added({ before, uses })).toMatchObject({ covered: [], fittedAgain: ['part-1'] });
    // Another row of the parts list under the old name is another part.
    const other = [{ part: 'USB-C socket, 16 pin', partId: 't', lotId: 'new' }];
    expect(added({ before, uses: other })).toMatchObject({ covered: [{ id: 'part-2' }], fittedAgain: [] });
  });

  it('is a line for each part that was not in the unit before', () => {
    const { covered, lots } = added({ uses: [{ part: 'Shield', lotId: 'a', ownTerm: 'P6M' }] });
    expect(covered).toEqual([
      { id: 'part-2', kind: 'part', description: 'Shield', symptoms: ['Does not charge'], ownTerm: 'P6M' },
    ]);
    expect([...lots]).toEqual([['part-2', 'a']]);
  });

  it('is a new line for a part that was paid for, though one of its name is known', () => {
    const part = 'USB-C socket, 16 pin';
    const { covered, lots, fittedAgain } = added({
      uses: [{ part, lotId: 'new' }],
      paid: [paid(part, 'part', 900)],
    });
    expect(covered).toMatchObject([{ id: 'part-2', symptoms: [`Has failed again: ${part}`] }]);
    expect([[...lots], fittedAgain]).toEqual([[['part-2', 'new']], []]);
  });

  it('is a line of work for each labour line that was paid for', () => {
    const { covered } = added({
      paid: [paid('Fader replaced'), paid('Two pads rebuilt'), paid('Parcel to you', 'postage')],
    });
    expect(covered).toEqual([
      { id: 'work-2', kind: 'work', description: 'Fader replaced', symptoms: ['A fader scratches'] },
      {
        id: 'work-3',
        kind: 'work',
        description: 'Two pads rebuilt',
        symptoms: ['Has failed again: Two pads rebuilt'],
      },
    ]);
  });

  it('is no line for labour that was given away', () => {
    expect(added({ paid: [paid('Goodwill', 'labour', 0)] }).covered).toEqual([]);
  });

  it('does not answer for the faults of the covered repair', () => {
    const { covered } = added({
      uses: [{ part: 'Fader, 60 mm', lotId: 'f' }],
      paid: [paid('Two pads rebuilt'), paid('Fader, 60 mm', 'part', 900)],
    });
    const lines = covered.map((each) => ({ ...someLine(), ...each }));
    expect(lines).toHaveLength(2);
    expect(relevantLines(lines, 'Does not charge')).toEqual([]);
    expect(relevantLines(lines, 'other')).toHaveLength(2);
  });

  it('goes on from the highest number of the chain, whatever lines were left out before', () => {
    const before = [
      { id: 'work-1', kind: 'work', description: 'USB-C socket replaced' },
      { id: 'part-4', kind: 'part', description: 'Shield' },
    ] as const;
    const { covered } = added({
      before,
      uses: [
        { part: 'Spring', lotId: 'a' },
        { part: 'Clip', lotId: 'b' },
      ],
    });
    expect(covered.map(({ id }) => id)).toEqual(['part-5', 'part-6']);
  });
});
