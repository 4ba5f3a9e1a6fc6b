import { describe, expect, it } from 'vitest';
import { couldBeginEarly } from '@/lib/jobs/rules/guards';
import * as sets from '@/lib/jobs/rules/stage-sets';
import { STAGES, type Stage } from '@/lib/jobs/rules/stages';

const allBut = (left: readonly Stage[]) => STAGES.filter((stage) => !left.includes(stage)).sort();

describe('sets of stages', () => {
  it.each(Object.entries(sets))('%s names each stage once', (_name, stages) => {
    expect(new Set(stages).size).toBe(stages.length);
  });

  // Said the other way round, so that a stage which is added is put on one side or the other.
  it.each<[string, readonly Stage[], readonly Stage[]]>([
    ['with the workshop', sets.WITH_US, sets.NOT_WITH_US],
    ['a certificate to come', sets.CERTIFICATE_TO_COME, [...sets.NO_MORE_NEWS, 'declined']],
    [
      'a promise that can be moved',
      sets.PROMISE_STAGES,
      ['booked', 'ready', 'declined', 'unclaimed', ...sets.NO_MORE_NEWS],
    ],
    ['parts to come', sets.PARTS_TO_COME, ['proving', 'declined', ...sets.UNFETCHED, ...sets.NO_MORE_NEWS]],
  ])('%s: everywhere but there', (_name, stages, left) => {
    expect([...stages].sort()).toEqual(allBut(left));
  });
});

it.each<[Stage, boolean, boolean]>([
  ['assessing', false, true],
  ['on-bench', false, true],
  ['assessing', true, false],
  ['booked', false, false],
  ['ready', false, false],
])('at %s, with the start allowed %s, somebody could begin early: %s', (stage, isStartAllowed, expected) => {
  expect(couldBeginEarly({ stage, isStartAllowed })).toBe(expected);
});
