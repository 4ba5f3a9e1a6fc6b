import { describe, expect, it } from 'vitest';
import {
  INSPECTION_ITEMS,
  type InspectionEntry,
  inspectedWords,
  inspectionState,
} from '@/lib/warranty/rules/inspection';

const entry = (item: string, changes: Partial<InspectionEntry> = {}): InspectionEntry => ({
  item,
  answer: 'no',
  hasPhoto: true,
  ...changes,
});
const before = INSPECTION_ITEMS.filter(({ stage }) => stage === 'before-opening').map(({ key }) => key);
const all = INSPECTION_ITEMS.map(({ key }) => key);

describe('the inspection of a returned unit', () => {
  it('looks at everything a ruling may rest on, before and after opening', () => {
    expect(before).toEqual([
      'outside-damage',
      'liquid-signs-outside',
      'seal-and-screws',
      'connector-magnified',
      'self-test-as-received',
    ]);
    expect(all.slice(before.length)).toEqual([
      'liquid-signs-inside',
      'previous-joints',
      'jumper-wires',
      'neighbouring-traces',
      'self-test-opened',
    ]);
  });

  it('names each item once', () => {
    expect(new Set(all).size).toBe(all.length);
  });

  it('warns before power is put on a unit that came back', () => {
    const selfTest = INSPECTION_ITEMS.find(({ key }) => key === 'self-test-as-received');
    expect(selfTest?.caution).toMatch(/licensed practice/);
  });

  it('starts with everything open', () => {
    const state = inspectionState([]);
    expect(state.unanswered).toEqual(all);
    expect(state.mayOpen).toBe(false);
    expect(state.isComplete).toBe(false);
  });

  it('lets the unit be opened once everything outside has an answer and a photo', () => {
    expect(inspectionState(before.map((item) => entry(item))).mayOpen).toBe(true);
  });

  it('keeps it closed while one photo from outside is missing', () => {
    const entries = before.map((item) => entry(item, { hasPhoto: item !== 'seal-and-screws' }));
    const state = inspectionState(entries);
    expect(state.mayOpen).toBe(false);
    expect(state.withoutPhoto).toEqual(['seal-and-screws']);
  });

  it('is complete with every answer and photo, and lists what stayed unclear', () => {
    const entries = all.map((item) =>
      entry(item, { answer: item === 'previous-joints' ? 'unclear' : 'yes' }),
    );
    const state = inspectionState(entries);
    expect(state.isComplete).toBe(true);
    expect(state.unclear).toEqual(['previous-joints']);
  });

  it('refuses an item that is not on the list, and one answered twice', () => {
    expect(() => inspectionState([entry('colour')])).toThrow(/colour/);
    expect(() => inspectionState([entry('jumper-wires'), entry('jumper-wires')])).toThrow(/twice/);
  });
});

describe('what a photo of the inspection is said to show', () => {
  const entries = [
    { item: 'seal-and-screws', answer: 'no', photoId: 'p1' },
    { item: 'outside-damage', answer: 'unclear', photoId: null },
  ];

  it('is its item with the answer', () => {
    expect(inspectedWords(entries, 'p1')).toBe('Seal broken, or screws moved or missing: no');
  });

  it.each(['p0', ''])('is nothing for a photo (%s) that no answer has any more', (photoId) => {
    expect(inspectedWords(entries, photoId)).toBeUndefined();
  });
});
