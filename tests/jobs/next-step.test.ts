import { describe, expect, it } from 'vitest';
import { type NextFacts, nextForCustomer } from '@/lib/jobs/rules/next-step';
import { STAGES } from '@/lib/jobs/rules/stages';

const CLAIM: NextFacts = {
  stage: 'on-bench',
  kind: 'claim',
  promisedOn: null,
  owed: null,
  returnFee: '£9.60',
  offerUntil: null,
  carrier: '',
  ruling: 'partly',
};
const next = (over: Partial<NextFacts>) => nextForCustomer({ ...CLAIM, ...over }, 'en-GB');

describe('what happens next on a claim', () => {
  it.each(['booked', 'arrived', 'awaiting-parts', 'on-bench', 'proving', 'ready'] as const)(
    'costs nothing at the stage %s while nothing else was agreed',
    (stage) => {
      expect(next({ stage })).toContain('This costs you nothing.');
    },
  );

  it.each(['awaiting-parts', 'on-bench', 'proving'] as const)(
    'keeps the covered part free at the stage %s when the rest was agreed',
    (stage) => {
      const text = next({ stage, owed: '£24.00' });
      expect(text).toContain(
        'The covered part costs you nothing. For the rest you pay £24.00 when it is ready, as you agreed.',
      );
      expect(text).not.toContain('This costs you nothing');
    },
  );

  it('says how much is left to pay before it goes back', () => {
    expect(next({ stage: 'ready', owed: '£24.00' })).toContain('£24.00');
  });

  it('is said at every stage', () => {
    for (const stage of STAGES) expect(next({ stage })).toMatch(/\.$/);
  });
});
