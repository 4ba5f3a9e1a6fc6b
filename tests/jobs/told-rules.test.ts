import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { eventLine } from '@/lib/jobs/rules/events';
import type { JobFacts } from '@/lib/jobs/rules/guards';
import { goesByWithdrawal } from '@/lib/jobs/rules/stop';
import { heardOn, type Told, toldDayProblem, toldText, toldWhen } from '@/lib/jobs/rules/told';
import { lateAnswers, toldAnswers } from '@/lib/jobs/rules/told-answers';

const MONDAY = day('2026-11-30');
const told = (over: Partial<Told> = {}): Told => ({
  how: 'telephone',
  on: MONDAY,
  words: 'Go ahead.',
  ...over,
});

const ASKED: JobFacts = {
  kind: 'repair',
  stage: 'awaiting-approval',
  isSerialSettled: true,
  findings: 1,
  hasOpenOffer: true,
  hasAgreedPaidOffer: false,
  isPriceAgreed: true,
  isContractMade: true,
  ruling: null,
  workEntries: 0,
  checksFailed: 0,
  checksMissing: 2,
  owed: 0,
  withdrawUntil: null,
  isStartAllowed: true,
  mayWithdraw: false,
  isRepaired: false,
  isHandoverNamed: false,
  isWithCarrier: false,
  hasLeft: false,
  mayContest: false,
  isNoHeld: false,
  hasLapsedPrice: false,
  isGone: false,
  isSought: false,
  isWalkIn: false,
  isUntouched: false,
  hasMoney: false,
};

describe('what may be written down as told', () => {
  const until = day('2026-12-14');
  it.each<[string, Partial<JobFacts>, string[]]>([
    ['a yes or a no to a changed price', {}, ['accepted', 'declined']],
    ['a no alone where a yes would make the contract', { isContractMade: false }, ['declined']],
    [
      'a withdrawal beside them while its days run',
      { withdrawUntil: until, mayWithdraw: true },
      ['accepted', 'declined', 'withdrawn'],
    ],
    [
      'and after them, since a letter may have been posted in time',
      { stage: 'on-bench', hasOpenOffer: false, withdrawUntil: until, mayWithdraw: false },
      ['withdrawn'],
    ],
    [
      'on a claim of which a part is covered, both answers to the price of the rest',
      { kind: 'claim', ruling: 'partly' },
      ['accepted', 'declined'],
    ],
    [
      'a contest of a ruling, once, until the unit leaves',
      { kind: 'claim', stage: 'ready', hasOpenOffer: false, ruling: 'not-covered', mayContest: true },
      ['contested'],
    ],
    [
      'beside the answers to a price that came with it',
      { kind: 'claim', ruling: 'partly', mayContest: true },
      ['accepted', 'declined', 'contested'],
    ],
    [
      'no contest of a unit that has left',
      { kind: 'claim', stage: 'sent-back', hasOpenOffer: false, ruling: 'not-covered', mayContest: true },
      [],
    ],
    ['nothing while nobody is asked', { stage: 'on-bench', hasOpenOffer: false }, []],
    ['nothing of a unit that is ready', { stage: 'ready', hasOpenOffer: false, withdrawUntil: until }, []],
  ])('%s', (_name, over, answers) => {
    expect(toldAnswers({ ...ASKED, ...over }, { hasNo: false })).toEqual(answers);
  });

  const declined: JobFacts = { ...ASKED, stage: 'declined', hasOpenOffer: false };
  it.each<[string, JobFacts, boolean, string[]]>([
    [
      'a yes after all, while the price that was declined is held',
      { ...declined, isNoHeld: true },
      true,
      ['accepted-after-no'],
    ],
    ['and after that, since it may have been said in time', declined, true, ['accepted-after-no']],
    ['nothing of a unit that goes back for another reason', declined, false, []],
    ['nothing once it is packed', { ...declined, stage: 'ready' }, true, []],
    [
      'nothing where it would make the contract, which is theirs to press',
      { ...declined, isNoHeld: true, isContractMade: false },
      true,
      [],
    ],
  ])('%s', (_name, facts, hasNo, answers) => {
    expect(toldAnswers(facts, { hasNo })).toEqual(answers);
  });
});

describe('what may be written down once the price has lapsed', () => {
  const lapsed: JobFacts = { ...ASKED, stage: 'assessing', hasOpenOffer: false, hasLapsedPrice: true };
  it.each<[string, Partial<JobFacts>, string[]]>([
    ['a yes or a no that was told in time', {}, ['accepted', 'declined']],
    ['a no alone where a yes would make the contract', { isContractMade: false }, ['declined']],
    ['both while it waits for a part', { stage: 'awaiting-parts' }, ['accepted', 'declined']],
    ['a yes alone once the work is done', { stage: 'ready' }, ['accepted']],
    ['both to the rest of a claim', { kind: 'claim', ruling: 'partly' }, ['accepted', 'declined']],
    [
      'both to the rest of one that waits for a part',
      { kind: 'claim', ruling: 'partly', stage: 'awaiting-parts' },
      ['accepted', 'declined'],
    ],
    ['nothing once something has overtaken it', { hasLapsedPrice: false }, []],
    ['nothing while the customer is asked anew', { stage: 'awaiting-approval' }, []],
    ['nothing of a unit that has left', { stage: 'sent-back' }, []],
  ])('%s', (_name, over, answers) => {
    expect(lateAnswers({ ...lapsed, ...over })).toEqual(answers);
    expect(toldAnswers({ ...lapsed, ...over }, { hasNo: false })).toEqual([]);
  });
});

describe('the day of an answer that was told', () => {
  const since = day('2026-11-26');
  it.each([
    ['the day it could first be given', '2026-11-26', null],
    ['today', '2026-11-30', null],
    ['a day to come', '2026-12-01', 'Enter the day they told us: today or before'],
    ['before it was asked', '2026-11-25', 'Enter the day they told us: Thursday 26 November 2026 or after'],
  ])('%s', (_name, on, problem) => {
    expect(toldDayProblem({ on: day(on), since, today: MONDAY, locale: 'en-GB' })).toBe(problem);
  });

  it.each([
    ['the last day of a price that has lapsed', '2026-11-28', null],
    [
      'the day after it',
      '2026-11-29',
      'Enter the day they told us: Saturday 28 November 2026 or before. The price was held until then',
    ],
    ['before it was asked', '2026-11-25', 'Enter the day they told us: Thursday 26 November 2026 or after'],
  ])('once the price has lapsed: %s', (_name, on, problem) => {
    const until = day('2026-11-28');
    expect(toldDayProblem({ on: day(on), since, until, today: MONDAY, locale: 'en-GB' })).toBe(problem);
  });

  it.each([
    ['telephone', 'by telephone on Monday 30 November 2026', MONDAY],
    ['e-mail', 'in writing on Monday 30 November 2026', MONDAY],
    ['in-person', 'in person on Monday 30 November 2026', MONDAY],
    // Its own day is when it was posted; the workshop knows of it once it is here.
    ['letter', 'in a letter of Monday 30 November 2026', null],
  ] as const)('%s: how it is said, and since when the workshop knows of it', (how, words, heard) => {
    expect(toldWhen(told({ how }), 'en-GB')).toBe(words);
    expect(heardOn(told({ how }))).toBe(heard);
  });
});

it('an answer is kept with how and when it was told, before what it comes to', () => {
  expect(toldText(told(), 'I agree to £96.00.', 'en-GB')).toBe(
    'Told us by telephone on Monday 30 November 2026: I agree to £96.00.',
  );
});

it('the history says how an answer came, and forgets the words with the person', () => {
  const line = (over: Partial<Told>) =>
    eventLine('offer-decided', { revision: 2, decision: 'accepted', told: told(over) });
  expect(line({})).toBe('Changed price accepted (revision 2), told by telephone: “Go ahead.”');
  expect(line({ words: '' })).toBe('Changed price accepted (revision 2), told by telephone');
  expect(eventLine('withdrawn', { owed: 0, told: told({ how: 'letter' }) })).toBe(
    'The customer withdrew from the contract, told in a letter: “Go ahead.”',
  );
  expect(eventLine('claim-contested', { claim: 'C1', told: told({ words: 'It was never wet.' }) })).toBe(
    'Ruling contested by the customer, told by telephone: “It was never wet.”',
  );
  expect(eventLine('claim-contested', { claim: 'C1' })).toBe('Ruling contested by the customer');
  expect(eventLine('withdrawn', { owed: 0 })).toBe('The customer withdrew from the contract');
});

it.each([
  ['they asked, and owe less by withdrawing', 'customer-asked', { fees: 960, owed: 0 }, true],
  ['as much either way', 'customer-asked', { fees: 960, owed: 960 }, false],
  [
    'more by withdrawing, for the work they asked to be begun',
    'customer-asked',
    { fees: 960, owed: 1800 },
    false,
  ],
  ['no right to withdraw', 'customer-asked', { fees: 960, owed: null }, false],
  ['it cannot be repaired', 'cannot-repair', { fees: 960, owed: 0 }, false],
] as const)('a unit that goes back is a withdrawal: %s', (_name, why, o, goes) => {
  expect(goesByWithdrawal(why, o)).toBe(goes);
});
