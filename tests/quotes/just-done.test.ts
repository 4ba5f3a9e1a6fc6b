import { describe, expect, it } from 'vitest';
import { stillDoneOnQuote } from '@/lib/quotes/rules/just-done';
import { REQUEST_STATES } from '@/lib/quotes/rules/request-states';

const statesOf = (said: unknown, hasLastWord = false) =>
  REQUEST_STATES.filter((state) => stillDoneOnQuote(said, { state, hasLastWord }) !== null);

describe('what the address of a quote says was just done', () => {
  it.each(['asked', 'accepted', 'declined'])('%s is true in that state alone', (said) => {
    expect(statesOf(said)).toEqual([said]);
    expect(statesOf(said, true)).toEqual([said]);
  });

  it('what was added is here until it is answered', () => {
    expect(statesOf('answered')).toEqual([]);
    expect(statesOf('answered', true)).toEqual([...REQUEST_STATES]);
  });

  it.each([undefined, '', 'constructor', ['asked']])('%j says nothing', (said) => {
    expect(statesOf(said, true)).toEqual([]);
  });
});
