import { describe, expect, it } from 'vitest';
import { carriesSentence } from '@/lib/returns/rules/carries-words';
import { CARRIES_WORD } from '@/lib/returns/rules/repair-worth-words';

const ALL = Object.keys(CARRIES_WORD) as (keyof typeof CARRIES_WORD)[];
/** Every set of answers that repairs may have together, the empty one too: 64 of them. */
const SETS = Array.from({ length: 2 ** ALL.length }, (_, mask) => ALL.filter((_, bit) => (mask >> bit) & 1));

describe('what is said of all repairs together', () => {
  it.each(SETS.map((set) => [set.join(', ') || 'none', set] as const))('of %s', (_, set) => {
    const said = carriesSentence(set);
    const has = (...some: (typeof ALL)[number][]) => some.some((each) => set.includes(each));
    const isEvery = said?.startsWith('Every repair') ?? false;
    expect(isEvery).toBe(has('yes') && !has('no', 'in-doubt', 'below-cost'));
    const isOfOthers = said?.startsWith('All others') ?? false;
    expect(isOfOthers).toBe(has('yes') && has('below-cost') && !has('no', 'in-doubt'));
    const isUnknown = /\bknown yet\b|nothing is known/.test(said ?? '');
    const isSilent = has('no', 'in-doubt') || (has('below-cost') && set.length === 1);
    expect(said === null).toBe(isSilent);
    expect(isUnknown).toBe(!isSilent && !has('yes'));
  });

  it('names what there is to know', () => {
    expect(carriesSentence([])).toMatch(/^No repair was sent back/);
    expect(carriesSentence(['too-few', 'too-few'])).toMatch(/^Of no repair is enough known yet/);
    expect(carriesSentence(['below-cost', 'unknown'])).toMatch(/^Of the others not enough is known yet/);
  });
});
