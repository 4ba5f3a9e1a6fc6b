import { describe, expect, it } from 'vitest';
import {
  postageAfterPayment,
  postageProblem,
  postageStanding,
  toldOfEnd,
} from '@/lib/warranty/rules/postage';

describe('the postage of a claim', () => {
  it.each([
    ['before the ruling', null, false, 'not-due'],
    ['once it is covered', null, true, 'to-ask'],
    ['asked for', 'asked', true, 'asked'],
    ['asked for under a ruling that was taken back', 'asked', false, 'not-due'],
    ['paid back', 'paid', true, 'paid'],
    ['paid back before the ruling was another', 'paid', false, 'paid'],
    ['not wanted', 'not-wanted', true, 'not-wanted'],
    ['in words that no version wrote', 'lost', true, 'to-ask'],
  ] as const)('%s', (_name, state, isPaidBack, standing) => {
    const found = postageStanding({ state, isPaidBack });
    expect(found).toBe(standing);
    expect(postageProblem(found) === null).toBe(standing === 'to-ask');
  });
});

it.each([
  ['asked', 'You have asked for your postage already.'],
  ['paid', 'Your postage is paid back already.'],
  ['not-wanted', 'We closed this question with you.'],
  ['not-due', 'Postage is paid back once a claim is ruled covered.'],
] as const)('who may not ask for it is told why: %s', (standing, words) => {
  expect(postageProblem(standing)).toContain(words);
});

describe('postage after an entry of what was paid back', () => {
  it.each([
    ['all of what was asked', 'asked', 560, 560, 'paid', 0],
    ['more than was asked', 'asked', 560, 600, 'paid', 0],
    ['a part of it', 'asked', 560, 56, 'asked', 504],
    ['an entry that was corrected', 'paid', 560, 0, 'asked', 560],
    ['some, though nobody asked', null, null, 130, 'paid', 0],
    ['a corrected one that nobody had asked for', 'paid', null, 0, null, 0],
    ['a part, after it was ended unpaid', 'not-wanted', 560, 56, 'not-wanted', 504],
    ['all, after it was ended unpaid', 'not-wanted', 560, 560, 'paid', 0],
  ] as const)('%s', (_name, state, asked, paid, then, left) => {
    expect(postageAfterPayment({ state, asked, paid })).toEqual({ state: then, left });
  });
});

describe('postage that ended unpaid', () => {
  const events = [
    { kind: 'postage-asked', data: { claim: 'K1', amount: 560 } },
    { kind: 'postage-ended', data: { claim: 'K1', reason: 'We sent you a label.' } },
  ];
  it.each([
    ['was asked for: the reason is told', events, true, 'We sent you a label.'],
    ['was never asked for: the reason is the workshop’s own', events.slice(1), false, null],
    ['is asked for still', events.slice(0, 1), true, null],
  ] as const)('%s', (_name, happened, isAsked, told) => {
    expect(toldOfEnd(happened, { isAsked })).toBe(told);
  });
});
