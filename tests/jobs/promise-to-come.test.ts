import { describe, expect, it } from 'vitest';
import { isPromisedAnew, isPromiseOver, promiseToCome } from '@/lib/jobs/rules/promise-to-come';
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

describe('a yes gives a day of its own', () => {
  const claim = { kind: 'claim', isContractMade: false } as const;

  it.each([
    [null, false],
    ['covered', false],
    ['partly', false],
    ['not-covered', true],
    ['returned-free', true],
  ] as const)('on a claim with the ruling %s: %s', (ruling, isAnew) => {
    expect(isPromisedAnew({ ...claim, ruling })).toBe(isAnew);
    expect(isPromisedAnew({ ...claim, ruling, isContractMade: true })).toBe(false);
    expect(isPromisedAnew({ ...claim, ruling, kind: 'repair' })).toBe(false);
  });
});

describe('a promise to come', () => {
  const WITH_A_YES = 'with your yes to a price';
  const claim = {
    stage: 'assessing',
    kind: 'claim',
    ruling: null,
    hasAgreedPaidOffer: false,
    isPriceAgreed: true,
    hasOpenOffer: false,
    isNoFault: false,
  } as const;

  it.each([
    [null, null],
    ['covered', null],
    ['partly', null],
    ['not-covered', WITH_A_YES],
    ['returned-free', null],
  ] as const)('on a claim with the ruling %s: %s', (ruling, words) => {
    for (const stage of PROMISE_STAGES) expect(promiseToCome({ ...claim, stage, ruling })).toBe(words);
  });

  // A claim after the end of cover that was not let in is not covered whatever was found.
  it.each(['not-covered', 'returned-free'] as const)('is none where nothing was found, %s', (ruling) => {
    for (const isPriceAgreed of [true, false])
      expect(promiseToCome({ ...claim, ruling, isNoFault: true, isPriceAgreed })).toBeNull();
  });

  it('comes with the price that is asked about, whatever was ruled', () => {
    const asked = { ...claim, stage: 'awaiting-approval', hasOpenOffer: true } as const;
    expect(promiseToCome({ ...asked, ruling: 'not-covered', isNoFault: true })).toBe(WITH_A_YES);
    expect(promiseToCome({ ...asked, ruling: 'returned-free', isNoFault: true })).toBe(WITH_A_YES);
  });

  it.each([
    ['booked', 'once it is here'],
    ['arrived', WITH_A_YES],
    ['assessing', WITH_A_YES],
    ['ready', null],
    ['declined', null],
    ['cancelled', null],
  ] as const)('of a parcel that came without a booking, %s: %s', (stage, words) => {
    expect(promiseToCome({ ...claim, kind: 'repair', stage, isPriceAgreed: false })).toBe(words);
  });
});
