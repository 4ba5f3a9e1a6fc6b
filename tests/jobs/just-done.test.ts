import { describe, expect, it } from 'vitest';
import { DONE, type Done, type DoneFacts, stillDone } from '@/lib/jobs/rules/just-done';
import { STAGES, type Stage } from '@/lib/jobs/rules/stages';

const FACTS: DoneFacts = {
  stage: 'booked',
  kind: 'repair',
  ruling: null,
  hasOpenOffer: false,
  hasReference: false,
  isStartAsked: false,
  isWithdrawn: false,
  isContested: false,
  isPostageAsked: false,
  hasLastWord: false,
};
const stagesOf = (done: Done, over: Partial<DoneFacts> = {}): Stage[] =>
  STAGES.filter((stage) => stillDone(done, { ...FACTS, ...over, stage }) === done);

describe('what an address says was just done', () => {
  it.each<[Done, Partial<DoneFacts>, Stage[]]>([
    ['accepted', {}, ['awaiting-parts', 'on-bench']],
    ['rest-declined', { kind: 'claim' }, ['awaiting-parts', 'on-bench']],
    ['declined', {}, ['declined']],
    ['reference', { hasReference: true }, ['booked']],
    ['no-reference', {}, ['booked']],
    ['cancelled', {}, ['cancelled']],
    [
      'start',
      { isStartAsked: true },
      ['booked', 'arrived', 'assessing', 'awaiting-approval', 'awaiting-parts', 'on-bench'],
    ],
    ['withdrawn', { isWithdrawn: true }, ['cancelled', 'declined']],
  ])('%s is true in its stages alone', (done, over, stages) => {
    expect(stagesOf(done, over)).toEqual(stages);
  });

  it.each<[Done, Partial<DoneFacts>]>([
    ['accepted', { hasOpenOffer: true }],
    ['reference', { hasReference: false }],
    ['no-reference', { hasReference: true }],
    ['start', { isStartAsked: false }],
    ['start', { isStartAsked: true, isWithdrawn: true }],
    ['withdrawn', {}],
    ['message', {}],
    ['postage', { kind: 'claim' }],
    ['contested', { kind: 'claim' }],
    ['contested', { kind: 'claim', isContested: true, ruling: 'not-covered' }],
  ])('%s is not said of what is not so: %j', (done, over) => {
    expect(stagesOf(done, over)).toEqual([]);
  });

  it('a message is here until it is answered, a second look until it is ruled, and postage until it is paid', () => {
    expect(stillDone('message', { ...FACTS, stage: 'closed', hasLastWord: true })).toBe('message');
    expect(stillDone('contested', { ...FACTS, kind: 'claim', isContested: true })).toBe('contested');
    expect(stillDone('postage', { ...FACTS, stage: 'closed', isPostageAsked: true })).toBe('postage');
  });

  it.each([undefined, '', 'toString', ['accepted'], 'ACCEPTED'])('%j says nothing', (said) => {
    for (const stage of STAGES) expect(stillDone(said, { ...FACTS, stage })).toBeNull();
    expect(DONE).not.toContain(said);
  });
});
