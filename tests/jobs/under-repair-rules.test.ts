import { expect, test } from 'vitest';
import { STAGES } from '@/lib/jobs/rules/stages';
import {
  mayProveBeside,
  mayPutUnder,
  namesOldAlone,
  UNDER_REPAIR_STAGES,
} from '@/lib/jobs/rules/under-repair';

const HERE = { kind: 'repair', stage: 'assessing', ruling: null, hasLeft: false } as const;

test.each([
  ['a repair that is looked at', {}, 'allowed'],
  ['one that left once', { hasLeft: true }, 'left-before'],
  ['one that left once and is ready', { hasLeft: true, stage: 'ready' }, 'wrong-stage'],
  ['a claim without a final ruling', { kind: 'claim' }, 'not-ruled'],
  ['a covered claim', { kind: 'claim', ruling: 'covered' }, 'covered'],
  ['a partly covered claim', { kind: 'claim', ruling: 'partly' }, 'covered'],
  ['a claim of which nothing is covered', { kind: 'claim', ruling: 'not-covered' }, 'allowed'],
  ['a claim on which no fault was found', { kind: 'claim', ruling: 'returned-free' }, 'allowed'],
] as const)('%s: %s', (_name, over, expected) => {
  const answer = mayPutUnder({ ...HERE, ...over });
  expect(answer.allowed ? 'allowed' : answer.reason).toBe(expected);
});

test('a job is put under another repair only where its unit is looked at, worked on or proved', () => {
  const open = STAGES.filter((stage) => mayPutUnder({ ...HERE, stage }).allowed);
  expect(open).toEqual(['assessing', 'awaiting-parts', 'on-bench', 'proving']);
  expect(new Set(open)).toEqual(new Set(UNDER_REPAIR_STAGES));
});

test('another sheet is proved on in the same stages, of a unit that never left', () => {
  const open = STAGES.filter((stage) => mayProveBeside({ stage, hasLeft: false }).allowed);
  expect(new Set(open)).toEqual(new Set(UNDER_REPAIR_STAGES));
  expect(mayProveBeside({ stage: 'on-bench', hasLeft: true })).toEqual({
    allowed: false,
    reason: 'left-before',
  });
  expect(mayProveBeside({ stage: 'ready', hasLeft: true })).toEqual({
    allowed: false,
    reason: 'wrong-stage',
  });
});

test('a price for another repair says what is done in at least one line', () => {
  const before = { name: 'Socket', formerNames: ['Port'] };
  const line = (description: string, kind = 'labour') => ({ kind, description });
  expect(namesOldAlone([line('Socket'), line('Port'), line('A fader', 'part')], before)).toBe(true);
  expect(namesOldAlone([line('Socket'), line('Fader')], before)).toBe(false);
  expect(namesOldAlone([line('A fader', 'part')], before)).toBe(false);
});
