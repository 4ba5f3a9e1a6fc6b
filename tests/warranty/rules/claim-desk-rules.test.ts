import { describe, expect, it } from 'vitest';
import { earlierRulings } from '@/lib/warranty/earlier-rulings';
import {
  beforeAndAfter,
  type ComparedCheck,
  type ComparedEntry,
} from '@/lib/warranty/rules/before-and-after';
import { claimCost, ownPart } from '@/lib/warranty/rules/claim-cost';
import { claimStanding } from '@/lib/warranty/rules/claim-standing';
import { isOtherClaimant } from '@/lib/warranty/rules/claimant';

const AT = new Date('2027-02-08T10:00:00Z');
const LATER = new Date('2027-02-09T10:00:00Z');

describe('where a claim stands', () => {
  it.each([
    ['an open claim is to be ruled on', { state: 'open', ruling: null, contestedAt: null }, 'to-rule'],
    [
      'an open claim with a ruling waits for the second look',
      { state: 'open', ruling: 'not-covered', contestedAt: null },
      'second-look',
    ],
    ['a contested claim is to be ruled anew', { state: 'open', ruling: null, contestedAt: AT }, 'contested'],
    [
      'a contested claim that was ruled anew waits for the second look',
      { state: 'open', ruling: 'not-covered', contestedAt: AT },
      'second-look',
    ],
    [
      'one that the owner took back after its contest was answered is to be ruled on',
      { state: 'open', ruling: null, contestedAt: AT, reopenedAt: LATER },
      'to-rule',
    ],
    [
      'one that is contested after the owner had taken a ruling back is contested',
      { state: 'open', ruling: null, contestedAt: LATER, reopenedAt: AT },
      'contested',
    ],
    ['a final ruling', { state: 'ruled', ruling: 'covered', contestedAt: null }, 'ruled'],
    ['a claim that is over', { state: 'closed', ruling: 'covered', contestedAt: null }, 'closed'],
  ] as const)('%s', (_name, claim, standing) => {
    expect(claimStanding({ reopenedAt: null, ...claim, job: { arrivedAt: AT } })).toBe(standing);
  });

  it('an open claim whose unit has not come waits for it, and a contested or closed one does not', () => {
    const job = { arrivedAt: null };
    const none = { ruling: null, contestedAt: null, reopenedAt: null };
    expect(claimStanding({ state: 'open', ...none, job })).toBe('not-here');
    expect(claimStanding({ state: 'open', ...none, contestedAt: AT, job })).toBe('contested');
    expect(claimStanding({ state: 'closed', ...none, job })).toBe('closed');
  });
});

describe('what a claim costs', () => {
  const rate = { labourRateMinor: 4800, postageMinor: 0, parts: [] };

  it.each([
    ['45 minutes at 48.00 an hour', { ...rate, minutes: 45 }, 3600],
    ['no time at all', { ...rate, minutes: 0 }, 0],
    // 1 minute at 48.50 an hour is 0.80833: rounded once, half up.
    ['one minute, rounded half up once', { ...rate, minutes: 1, labourRateMinor: 4850 }, 81],
    ['7 minutes at 33.30 an hour, 3.885', { ...rate, minutes: 7, labourRateMinor: 3330 }, 389],
  ])('%s', (_name, facts, labour) => {
    expect(claimCost(facts).labour).toBe(labour);
  });

  it('adds parts at what they were bought for, and the postage', () => {
    const cost = claimCost({
      minutes: 45,
      labourRateMinor: 4800,
      postageMinor: 420,
      parts: [
        { quantity: 2, unitCostMinor: 180 },
        { quantity: 1, unitCostMinor: 95 },
      ],
    });
    expect(cost).toEqual({ minutes: 45, labour: 3600, parts: 455, postage: 420, together: 4475 });
  });

  it('refuses negative minutes', () => {
    expect(() => claimCost({ ...rate, minutes: -1 })).toThrow('Not a number of minutes');
  });

  it.each([
    ['nothing paid', 0, { minutes: 45, parts: 180 }],
    ['less than the parts', 100, { minutes: 45, parts: 80 }],
    ['parts and some of the work', 2000, { minutes: 23, parts: 0 }],
    ['more than it took', 9000, { minutes: 0, parts: 0 }],
  ])('leaves out what the customer paid for: %s', (_name, paidNet, own) => {
    expect(ownPart({ minutes: 45, parts: 180, paidNet, labourRateMinor: 4800 })).toEqual(own);
  });

  it('counts minutes that cost nothing as they are', () => {
    expect(ownPart({ minutes: 45, parts: 0, paidNet: 2000, labourRateMinor: 0 }).minutes).toBe(45);
  });
});

describe('readings before and after', () => {
  function check(id: string, label: string, some: Partial<ComparedCheck> = {}): ComparedCheck {
    return { id, label, kind: 'tick', unit: null, low: null, high: null, choices: [], passing: [], ...some };
  }
  function entry(checkId: string, some: Partial<ComparedEntry> = {}): ComparedEntry {
    return { checkId, isPassed: true, reading: null, choice: null, at: AT, ...some };
  }
  const later = new Date('2027-02-08T11:00:00Z');
  const volts = { kind: 'reading', unit: 'V', low: 4.75, high: 5.25 };

  it('match checks by label across versions of a sheet, with the limits of now', () => {
    const rows = beforeAndAfter(
      { checks: [check('a1', 'Charge voltage', volts)], entries: [entry('a1', { reading: 5.02 })] },
      {
        checks: [check('b1', 'Charge voltage', { ...volts, low: 4.9 })],
        entries: [entry('b1', { reading: 4.6, isPassed: false })],
      },
    );
    expect(rows).toEqual([
      {
        label: 'Charge voltage',
        limits: '4.9 to 5.25 V',
        before: { text: '5.02 V', isPassed: true },
        after: { text: '4.6 V', isPassed: false },
      },
    ]);
  });

  it('take the latest entry of a check that was done again', () => {
    const [row] = beforeAndAfter(
      {
        checks: [check('a1', 'Cable holds')],
        entries: [entry('a1', { at: later }), entry('a1', { isPassed: false })],
      },
      { checks: [], entries: [] },
    );
    expect(row?.before).toEqual({ text: 'done', isPassed: true });
  });

  it('leave out what neither side has read, and show a check that is gone with its old limits', () => {
    const rows = beforeAndAfter(
      {
        checks: [check('a1', 'Old check', volts), check('a2', 'Never done')],
        entries: [entry('a1', { reading: 5 })],
      },
      { checks: [check('b1', 'Look of it', { kind: 'choice', passing: ['clean'] })], entries: [] },
    );
    expect(rows).toEqual([
      { label: 'Old check', limits: '4.75 to 5.25 V', before: { text: '5 V', isPassed: true }, after: null },
    ]);
  });

  it('show a choice as it was chosen', () => {
    const [row] = beforeAndAfter(
      { checks: [], entries: [] },
      {
        checks: [check('b1', 'Look of it', { kind: 'choice', passing: ['clean'] })],
        entries: [entry('b1', { choice: 'crusted', isPassed: false })],
      },
    );
    expect(row?.after).toEqual({ text: 'crusted', isPassed: false });
  });
});

describe('rulings before a contest', () => {
  const ruled = (ruling: string) => ({
    kind: 'claim-ruled',
    at: AT,
    data: { claim: 'C1', cause: 'separate-fault', ruling, isFinal: false },
  });
  const contested = { kind: 'claim-contested', at: AT, data: { claim: 'C1' } };

  it('are read from the history, and those after it are not among them', () => {
    const found = earlierRulings([ruled('not-covered'), contested, ruled('covered')]);
    expect(found).toEqual([{ cause: 'separate-fault', ruling: 'not-covered', at: AT }]);
  });

  it('are those before the owner last took one back, where that is asked', () => {
    const reopened = { kind: 'claim-reopened', at: AT, data: { claim: 'C1', reason: 'It failed again.' } };
    const events = [ruled('not-covered'), contested, ruled('returned-free'), reopened, ruled('covered')];
    expect(earlierRulings(events).map(({ ruling }) => ruling)).toEqual(['not-covered']);
    const before = earlierRulings(events, 'claim-reopened');
    expect(before.map(({ ruling }) => ruling)).toEqual(['not-covered', 'returned-free']);
  });

  it('are none without a contest', () => {
    expect(earlierRulings([ruled('not-covered')])).toEqual([]);
  });
});

describe('whether another owner claims', () => {
  const first = { name: 'Ada Brook', email: 'ada@example.org' };
  it.each([
    ['nobody else under another spelling', false, { name: ' ada  BROOK', email: 'Ada@example.org ' }, false],
    ['somebody under another name', false, { ...first, name: 'Ben Ash' }, true],
    ['somebody at another address', false, { ...first, email: 'ben@example.org' }, true],
    [
      'whoever owns it, where the promise goes with the unit',
      true,
      { name: 'Ben Ash', email: 'ben@example.org' },
      false,
    ],
  ])('%s', (_name, transferable, claimant, expected) => {
    expect(isOtherClaimant({ transferable, first, claimant })).toBe(expected);
  });
});
