import { describe, expect, it } from 'vitest';
import { isPromiseOver } from '@/lib/jobs/rules/promise-to-come';
import { PROMISE_STAGES } from '@/lib/jobs/rules/stage-sets';
import { STAGES } from '@/lib/jobs/rules/stages';

describe('a promise is over', () => {
  const claim = { stage: 'assessing', kind: 'claim', hasAgreedPaidOffer: false } as const;

  it.each([
    [null, false],
    ['covered', false],
    ['partly', false],
    ['not-covered', true],
    ['returned-free', true],
  ] as const)('on a claim with the ruling %s: %s', (ruling, isOver) => {
    for (const stage of PROMISE_STAGES) expect(isPromiseOver({ ...claim, stage, ruling })).toBe(isOver);
  });

  it('on no claim whose repair was agreed to all the same', () => {
    expect(isPromiseOver({ ...claim, ruling: 'not-covered', hasAgreedPaidOffer: true })).toBe(false);
  });

  it('on a repair once it goes back as it is, and at no other stage', () => {
    const over = STAGES.filter((stage) => isPromiseOver({ ...claim, stage, kind: 'repair', ruling: null }));
    expect(over).toEqual(['declined']);
  });
});
