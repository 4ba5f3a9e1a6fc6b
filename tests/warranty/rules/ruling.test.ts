import { describe, expect, it } from 'vitest';
import { CAUSE_TABLE, CAUSES, causeRow, RULINGS } from '@/lib/warranty/rules/causes';
import {
  afterCover,
  type Findings,
  isCoveredAtLeastPartly,
  isFinalRuling,
  mayContest,
  mayRule,
  type RulingDraft,
  rulingFor,
  rulingNeeds,
} from '@/lib/warranty/rules/ruling';

const clear: Omit<Findings, 'cause'> = {
  alsoFound: null,
  isEvidenceClear: true,
  evidencePhotos: 2,
  isWithinTerm: true,
};

// Common practice of the trade, no source; written out here, so that a row of the table cannot change unseen.
const RULED = [
  ['workmanship', 'covered'],
  ['fitted-part', 'covered'],
  ['weakened-by-original-damage', 'covered'],
  ['separate-fault', 'not-covered'],
  ['damage-after-return', 'not-covered'],
  ['no-fault-found', 'returned-free'],
] as const;

describe('a claim that is not covered', () => {
  it.each([
    ['not-covered', 'workmanship', false, 'fault'],
    ['not-covered', 'no-fault-found', false, 'no-fault'],
    ['not-covered', 'separate-fault', true, null],
    ['not-covered', 'separate-fault', null, null],
    ['covered', 'workmanship', true, null],
  ] as const)('ruled %s for %s, let in: %s, came after cover: %s', (ruling, cause, isLetIn, told) => {
    expect(afterCover({ ruling, cause, isLetIn })).toBe(told);
  });
});

describe('the table of causes', () => {
  it('has one row for each cause, in the order of the list', () => {
    expect(CAUSE_TABLE.map(({ cause }) => cause)).toEqual([...CAUSES]);
  });

  it('covers our work, our parts and what the first damage had weakened', () => {
    expect(CAUSE_TABLE.map(({ cause, ruling }) => [cause, ruling])).toEqual(RULED);
  });

  it('asks for visible evidence wherever something is not covered', () => {
    expect(CAUSES.filter((cause) => causeRow(cause).needsVisibleEvidence)).toEqual([
      'separate-fault',
      'damage-after-return',
    ]);
  });
});

const rows: { name: string; findings: Findings; ruling: string; isByDoubt: boolean }[] = [
  ...RULED.map(([cause, ruling]) => ({
    name: `${cause} with clear evidence is ${ruling}`,
    findings: { ...clear, cause },
    ruling,
    isByDoubt: false,
  })),
  {
    name: 'damage after return without a photo is covered',
    findings: { ...clear, cause: 'damage-after-return', evidencePhotos: 0 },
    ruling: 'covered',
    isByDoubt: true,
  },
  {
    name: 'damage after return with a photo that leaves doubt is covered',
    findings: { ...clear, cause: 'damage-after-return', isEvidenceClear: false },
    ruling: 'covered',
    isByDoubt: true,
  },
  {
    name: 'a separate fault that nobody can show is covered',
    findings: { ...clear, cause: 'separate-fault', isEvidenceClear: false },
    ruling: 'covered',
    isByDoubt: true,
  },
  {
    name: 'our work with a clear separate fault beside it is partly covered',
    findings: { ...clear, cause: 'workmanship', alsoFound: 'separate-fault' },
    ruling: 'partly',
    isByDoubt: false,
  },
  {
    name: 'our part with later damage that is not clear is covered whole',
    findings: { ...clear, cause: 'fitted-part', alsoFound: 'damage-after-return', isEvidenceClear: false },
    ruling: 'covered',
    isByDoubt: true,
  },
  {
    name: 'our work with a clear separate fault beside it that no photo shows is covered whole',
    findings: { ...clear, cause: 'workmanship', alsoFound: 'separate-fault', evidencePhotos: 0 },
    ruling: 'covered',
    isByDoubt: true,
  },
  {
    name: 'our work is covered without any photo',
    findings: { ...clear, cause: 'workmanship', evidencePhotos: 0, isEvidenceClear: false },
    ruling: 'covered',
    isByDoubt: false,
  },
  {
    name: 'no fault found after the term is not covered',
    findings: { ...clear, cause: 'no-fault-found', isWithinTerm: false },
    ruling: 'not-covered',
    isByDoubt: false,
  },
];

describe('the ruling that follows', () => {
  it.each(rows)('$name', ({ findings, ruling, isByDoubt }) => {
    expect(rulingFor(findings)).toEqual({ ruling, isByDoubt });
  });

  it('is never against the customer where the evidence is unclear and something is said to be theirs', () => {
    for (const cause of ['separate-fault', 'damage-after-return'] as const)
      for (const evidencePhotos of [0, 1, 5])
        expect(rulingFor({ ...clear, cause, evidencePhotos, isEvidenceClear: false }).ruling).toBe('covered');
  });
});

describe('what a ruling needs', () => {
  const draft: RulingDraft = {
    ...clear,
    cause: 'damage-after-return',
    reasonText: 'The socket was pulled out sideways after we sent it back; photo 2 shows the torn pads.',
    secondLook: { userId: 'u1', role: 'owner' },
  };

  it('nothing when covered, and photo, reason and second look otherwise', () => {
    expect(rulingNeeds('covered')).toEqual([]);
    for (const ruling of RULINGS.filter((one) => one !== 'covered'))
      expect(rulingNeeds(ruling)).toEqual(['evidence-photo', 'written-reason', 'owner-second-look']);
  });

  it('is allowed when everything is there', () => {
    expect(mayRule(draft)).toEqual({ allowed: true, ruling: 'not-covered', isByDoubt: false });
  });

  it('a covered ruling is allowed at once', () => {
    const plain = {
      ...draft,
      cause: 'workmanship' as const,
      reasonText: '',
      secondLook: null,
      evidencePhotos: 0,
    };
    expect(mayRule(plain)).toEqual({ allowed: true, ruling: 'covered', isByDoubt: false });
  });

  it('takes a reason of twenty characters, not counting the spaces around it', () => {
    const reasonOf = (length: number) => ({ ...draft, reasonText: `   ${'x'.repeat(length)}   ` });
    expect(mayRule(reasonOf(19))).toMatchObject({ allowed: false, missing: ['written-reason'] });
    expect(mayRule(reasonOf(20))).toMatchObject({ allowed: true });
  });

  it('waits for a written reason that is more than a label', () => {
    expect(mayRule({ ...draft, reasonText: '  user damage      ' })).toMatchObject({
      allowed: false,
      missing: ['written-reason'],
    });
  });

  it.each(['bench', 'front'] as const)('a second look from the %s is not the owner’s', (role) => {
    expect(mayRule({ ...draft, secondLook: { userId: 'u2', role } })).toMatchObject({
      allowed: false,
      missing: ['owner-second-look'],
    });
  });

  it('names everything that is missing at once', () => {
    const bare = {
      ...draft,
      cause: 'no-fault-found' as const,
      evidencePhotos: 0,
      reasonText: '',
      secondLook: null,
    };
    expect(mayRule(bare)).toEqual({
      allowed: false,
      ruling: 'returned-free',
      isByDoubt: false,
      missing: ['evidence-photo', 'written-reason', 'owner-second-look'],
    });
  });

  it('is final at once when covered, otherwise only after the second look', () => {
    expect(isFinalRuling({ ruling: 'covered', secondLookAt: null })).toBe(true);
    expect(isFinalRuling({ ruling: 'partly', secondLookAt: null })).toBe(false);
    expect(isFinalRuling({ ruling: 'partly', secondLookAt: new Date(0) })).toBe(true);
  });
});

describe('contesting a ruling', () => {
  it.each(['partly', 'not-covered', 'returned-free'] as const)('%s can be contested once', (ruling) => {
    expect(mayContest({ ruling, timesContested: 0 })).toEqual({ allowed: true });
    expect(mayContest({ ruling, timesContested: 1 })).toEqual({
      allowed: false,
      reason: 'already-contested',
    });
  });

  it('covered leaves nothing to contest', () => {
    expect(mayContest({ ruling: 'covered', timesContested: 0 })).toEqual({
      allowed: false,
      reason: 'nothing-to-contest',
    });
  });

  it('cover is renewed after a ruling that covers at least a part', () => {
    expect(RULINGS.filter(isCoveredAtLeastPartly)).toEqual(['covered', 'partly']);
  });
});
