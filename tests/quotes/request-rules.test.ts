import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { agreedWords } from '@/lib/quotes/rules/agreed-words';
import {
  isHeld,
  LEAST_VALID_DAYS,
  mayReplace,
  standsMeanwhile,
  validDaysProblem,
} from '@/lib/quotes/rules/held-price';
import { QUOTE_EVENT_DATA, quoteEventLine } from '@/lib/quotes/rules/quote-events';
import { emailKey, isSameUnit, requestForm } from '@/lib/quotes/rules/request-answers';
import {
  movesFrom,
  REQUEST_MOVES,
  REQUEST_STATES,
  REQUEST_WORDS,
  requestMove,
} from '@/lib/quotes/rules/request-states';

describe('the table of a quote that was asked for', () => {
  it('reaches every state but the first, and names each', () => {
    const reached = new Set(REQUEST_MOVES.map(({ to }) => to));
    for (const state of REQUEST_STATES) {
      expect(REQUEST_WORDS[state].customer).not.toBe('');
      expect(reached.has(state)).toBe(true);
    }
  });

  it('lets nobody leave a price that was booked or turned down', () => {
    for (const state of ['booked', 'turned-down'] as const) {
      for (const by of ['customer', 'staff', 'clock'] as const) expect(movesFrom(state, by)).toEqual([]);
    }
  });

  it('lets the customer take a no back, and the staff send another price', () => {
    expect(movesFrom('declined', 'customer').map(({ key }) => key)).toEqual(['accept-after-no']);
    expect(movesFrom('declined', 'staff').map(({ key }) => key)).toEqual(['send-quote']);
  });

  it('leaves yes and no to the customer and the price to the staff', () => {
    expect(movesFrom('quoted', 'customer').map(({ key }) => key)).toEqual(['accept', 'decline']);
    expect(movesFrom('quoted', 'staff').map(({ key }) => key)).toEqual(['send-quote', 'turn-down']);
    expect(movesFrom('accepted', 'staff').map(({ key }) => key)).toEqual(['turn-down']);
    expect(requestMove('lapse').by).toBe('clock');
    expect(movesFrom('quoted', 'clock').map(({ key }) => key)).toEqual(['lapse']);
    expect(movesFrom('accepted', 'customer').map(({ key }) => key)).toEqual(['book']);
  });

  it.each([
    ['asked', ['add'], ['ask-question', 'send-quote', 'turn-down']],
    ['questioned', ['answer', 'add'], ['ask-question', 'send-quote', 'turn-down']],
    ['lapsed', [], ['send-quote', 'turn-down']],
  ] as const)(
    'without a price that is held, at %s, the customer may %j and the staff %j',
    (state, theirs, ours) => {
      expect(movesFrom(state, 'customer').map(({ key }) => key)).toEqual(theirs);
      expect(movesFrom(state, 'staff').map(({ key }) => key)).toEqual(ours);
      expect(movesFrom(state, 'clock')).toEqual([]);
    },
  );
});

describe('a price that is held', () => {
  const today = day('2026-12-01');
  const held = { gross: 7450, validUntil: day('2026-12-31') };

  // Reg. (EEC, Euratom) 1182/71 Art. 3(1), (2)(b): the day of issue is not counted, the last day counts to its end.
  it('holds 30 calendar days from 1 December to the end of 31 December, and from 30 January to 1 March', () => {
    expect(addDays(today, LEAST_VALID_DAYS)).toBe('2026-12-31');
    expect(addDays(day('2026-01-30'), LEAST_VALID_DAYS)).toBe('2026-03-01');
    expect(isHeld(held.validUntil, day('2026-12-31'))).toBe(true);
    expect(isHeld(held.validUntil, day('2027-01-01'))).toBe(false);
  });

  // At the least as long as the conditions of a repair form: Directive (EU) 2024/1799 Art. 4.
  it('holds for 30 days at the least and a year at the most', () => {
    expect([29, 30, 365, 366].map((days) => validDaysProblem(days) === null)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it.each([
    ['sent', day('2026-12-31'), true],
    ['sent', day('2027-01-01'), false],
    ['accepted', day('2027-01-01'), true],
    ['declined', day('2026-12-31'), false],
    ['draft', day('2026-12-31'), false],
  ])('%s until 31 December stands meanwhile on %s: %s', (state, on, stands) => {
    expect(standsMeanwhile({ state, validUntil: day('2026-12-31') }, on)).toBe(stands);
    expect(standsMeanwhile(null, on)).toBe(false);
  });

  it('gives way to the same price or less, and to more only when the customer asked or it has lapsed', () => {
    expect(mayReplace(null, { gross: 1, customerAsked: false, today })).toBe(true);
    expect(mayReplace(held, { gross: 7450, customerAsked: false, today })).toBe(true);
    expect(mayReplace(held, { gross: 7451, customerAsked: false, today })).toBe(false);
    expect(mayReplace(held, { gross: 7451, customerAsked: true, today })).toBe(true);
    expect(mayReplace(held, { gross: 7451, customerAsked: false, isFaultFound: true, today })).toBe(true);
    expect(mayReplace(held, { gross: 7451, customerAsked: false, isFaultFound: false, today })).toBe(false);
    expect(mayReplace(held, { gross: 7451, customerAsked: false, today: day('2027-01-01') })).toBe(true);
  });
});

describe('two requests about one unit', () => {
  const unit = { serialKey: '', modelId: null, device: 'Marram Two' };

  it('are told by the serial where there is one', () => {
    expect(isSameUnit({ ...unit, serialKey: 'MR20581S' }, { ...unit, serialKey: 'MR20581S' })).toBe(true);
    expect(isSameUnit({ ...unit, serialKey: 'MR20581S' }, { ...unit, serialKey: 'MR20582S' })).toBe(false);
    expect(isSameUnit({ ...unit, serialKey: 'MR20581S' }, unit)).toBe(false);
  });

  it('are told by the device where there is none', () => {
    expect(isSameUnit(unit, { ...unit, device: ' marram  two' })).toBe(true);
    expect(isSameUnit(unit, { ...unit, device: 'Marram Three' })).toBe(false);
    expect(isSameUnit({ ...unit, modelId: 'a' }, { ...unit, modelId: 'b' })).toBe(false);
    expect(isSameUnit({ ...unit, modelId: 'a' }, unit)).toBe(true);
  });

  it('compare an address without its letters’ size', () => {
    expect(emailKey(' Ines.Farrow@Example.org ')).toBe('ines.farrow@example.org');
  });
});

describe('what is asked', () => {
  const typed = {
    device: 'Marram Two',
    problem: 'Left side drops out',
    name: 'Ines Farrow',
    email: 'i@example.org',
  };

  it('needs a device, what is wrong, a name and an address, and nothing else', () => {
    const read = requestForm.parse(typed);
    expect(read).toMatchObject({ serial: '', symptoms: [], history: [], phone: '' });
    for (const name of ['device', 'problem', 'name', 'email'] as const) {
      const { [name]: _, ...rest } = typed;
      expect(requestForm.safeParse(rest).success).toBe(false);
    }
    expect(requestForm.safeParse({ ...typed, history: ['stolen'] }).success).toBe(false);
    expect(requestForm.safeParse({ ...typed, model: 'HW-2' }).success).toBe(false);
  });
});

it('the words agreed to name every line, the total, the last day and the terms', () => {
  const words = agreedWords('accepted', {
    number: 'Q5T8BN3WZ',
    revision: 2,
    lines: [
      { description: 'Jack socket replaced', amount: 6500 },
      { description: 'Postage back', amount: 950 },
    ],
    isGross: true,
    gross: 7450,
    validUntil: day('2026-12-31'),
    cover: '12 months on work and parts',
    returnFee: 960,
    isTakenOff: false,
    currency: 'GBP',
    locale: 'en-GB',
  });
  for (const part of ['Q-5T8B-N3WZ', 'revision 2', 'Jack socket replaced £65.00', 'Postage back £9.50'])
    expect(words).toContain(part);
  expect(words).toContain('Total with tax £74.50, held until the end of Thursday 31 December 2026.');
  expect(words).toContain('Cover: 12 months on work and parts. A return unrepaired costs £9.60 at most.');
  expect(words).toContain('Under the terms');
});

it('every kind of event has a line in plain words', () => {
  const data = {
    photos: 2,
    messageId: 'm',
    revision: 1,
    gross: 7450,
    validUntil: '2026-12-31',
    customerAsked: false,
    decision: 'accepted',
    how: 'no-answer-needed',
    jobNumber: 'J4K7QX290',
  };
  for (const kind of Object.keys(QUOTE_EVENT_DATA)) {
    expect(quoteEventLine(kind, data)).toMatch(/^[A-Z].+/);
    expect(quoteEventLine(kind, data)).not.toContain('undefined');
  }
  expect(quoteEventLine('asked', { photos: 1 })).toBe('Price asked for, with 1 photo');
});
