import { describe, expect, it } from 'vitest';
import { againWords } from '@/lib/jobs/rules/again-words';
import { askedWords, coverBeside } from '@/lib/quotes/rules/asked-words';
import { nextForAsker } from '@/lib/quotes/rules/request-next';
import { requestRun } from '@/lib/quotes/rules/request-run';
import { customerWords, REQUEST_STATES, type RequestState } from '@/lib/quotes/rules/request-states';

const at = (day: number) => new Date(Date.UTC(2026, 11, day));

describe('the run of stamps of a quote', () => {
  const shown = (state: RequestState, kinds: string[]) =>
    requestRun(
      state,
      kinds.map((kind, index) => ({ kind, at: at(index + 1) })),
    ).map((step) => `${step.label} ${step.state} ${step.at?.getUTCDate() ?? '-'}`);

  it('goes from asked to booked, a question changing nothing in it', () => {
    const waiting = ['Price sent waiting -', 'Accepted waiting -', 'Booked waiting -'];
    expect(shown('asked', ['asked'])).toEqual(['Price asked now 1', ...waiting]);
    expect(shown('questioned', ['asked', 'questioned'])).toEqual(['Price asked now 1', ...waiting]);
    expect(shown('quoted', ['asked', 'sent', 'sent'])).toEqual([
      'Price asked done 1',
      'Price sent now 3',
      'Accepted waiting -',
      'Booked waiting -',
    ]);
    expect(shown('booked', ['asked', 'sent', 'decided', 'booked'])).toEqual([
      'Price asked done 1',
      'Price sent done 2',
      'Accepted done 3',
      'Booked done 4',
    ]);
  });

  it('stops where the quote ended, with nothing to come', () => {
    expect(shown('declined', ['asked', 'sent', 'decided'])).toEqual([
      'Price asked done 1',
      'Price sent done 2',
      'Declined stopped 3',
    ]);
    expect(shown('turned-down', ['asked', 'turned-down'])).toEqual([
      'Price asked done 1',
      'Turned down stopped 2',
    ]);
  });
});

it('says what happens next and what it costs in every state', () => {
  for (const state of REQUEST_STATES) {
    const words = nextForAsker({
      state,
      price: '£96.00',
      until: 'Thursday 31 December 2026',
      answerWithin: '3 working days',
    });
    if (state === 'asked' || state === 'questioned') expect(words).toContain('within 3 working days');
    expect(words).toMatch(/[.]$/);
    expect(words).toMatch(/cost|free|pay|owed/);
    expect(words).not.toMatch(/null|undefined/);
  }
});

// The price of a cancelled booking is not offered again: its repair may be on no list, so that the list is not named.
it('tells a customer whose booking was cancelled that the price ended with it, on both pages', () => {
  const told = nextForAsker({
    state: 'booked',
    price: '£96.00',
    until: null,
    answerWithin: '2 working days',
    isCancelled: true,
  });
  expect(told).toContain('ask us for a price again');
  expect(customerWords('booked', { hasPrice: true, isCancelled: true })).toBe('Your booking is cancelled');
  expect(customerWords('booked', { hasPrice: true, isCancelled: false })).toBe('Your repair is booked');
  expect(customerWords('booked', { hasPrice: true, isCancelled: false, isInspection: true })).toBe(
    'Your inspection is booked',
  );
  expect(againWords({ kind: 'repair', isQuoted: true }, 'en-GB')).not.toContain('price list');
  expect(againWords({ kind: 'repair', isQuoted: false }, 'en-GB')).toContain('price list');
  expect(againWords({ kind: 'claim', isQuoted: false }, 'en-GB')).toContain('certificate');
});

describe('a price for the inspection alone', () => {
  it('promises the cover of a repair that may follow, and none of its own', () => {
    const cover = '12 months on work and parts';
    expect(coverBeside(cover, true)).toBe(`of the repair, if you say yes to one: ${cover}`);
    expect(coverBeside(cover, false)).toBe(cover);
  });

  it('is asked about as one, and the repair is not sold with it', () => {
    const words = askedWords(true, '£18.00');
    expect(words.question).toBe('Shall we inspect it for £18.00?');
    expect(words.yes).toBe('Yes, inspect it for £18.00');
    expect(words.consequence).toContain('No repair is agreed to yet');
    expect(askedWords(false, '£18.00').question).toBe('Shall we repair it for £18.00?');
  });

  it.each(['quoted', 'accepted'] as const)('is followed by a price for the repair: %s', (state) => {
    const words = nextForAsker({
      state,
      price: '£18.00',
      until: 'Friday',
      answerWithin: '',
      isInspection: true,
    });
    expect(words).toContain('£18.00 for the inspection');
    expect(words).toMatch(/price (of its own|for the repair)/);
  });
});
