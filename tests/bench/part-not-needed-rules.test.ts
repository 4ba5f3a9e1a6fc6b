import { describe, expect, test } from 'vitest';
import {
  maySayIfNeeded,
  NEEDED_STAGES,
  type NeededFacts,
  type NeededReason,
  partsToCome,
} from '@/lib/bench/rules/part-not-needed';
import { eventLine } from '@/lib/jobs/rules/events';
import { STAGES } from '@/lib/jobs/rules/stages';

const socket = { partId: 's', name: 'Socket', quantity: 2 };
const knob = { partId: 'k', name: 'Knob', quantity: 1 };
const none = { usual: [], awaited: [], taken: [], notNeeded: [] };

describe('the parts that a job is still counted on for', () => {
  test.each<[string, Partial<Parameters<typeof partsToCome>[0]>, ReturnType<typeof partsToCome>]>([
    ['none', {}, []],
    ['usual of its repair', { usual: [socket] }, [{ ...socket, isNeeded: true }]],
    [
      'less what it took',
      { usual: [socket], taken: [{ partId: 's', quantity: 1 }] },
      [{ ...socket, quantity: 1, isNeeded: true }],
    ],
    ['taken', { usual: [socket], taken: [{ partId: 's', quantity: 2 }] }, []],
    [
      'waited for beside it, by name',
      { usual: [socket], awaited: [knob] },
      [
        { ...knob, isNeeded: true },
        { ...socket, isNeeded: true },
      ],
    ],
    [
      'waited for in more pieces than usual',
      { usual: [knob], awaited: [{ ...knob, quantity: 3 }] },
      [{ ...knob, quantity: 3, isNeeded: true }],
    ],
    [
      'said not needed, and so to be brought back',
      { usual: [socket, knob], notNeeded: ['s'] },
      [
        { ...knob, isNeeded: true },
        { ...socket, isNeeded: false },
      ],
    ],
    ['said not needed of one it does not take any more', { notNeeded: ['s'] }, []],
  ])('%s', (_name, some, parts) => {
    expect(partsToCome({ ...none, ...some })).toEqual(parts);
  });
});

describe('saying whether a part is needed', () => {
  const may: NeededFacts = { stage: 'on-bench', part: { isNeeded: true }, isNeeded: false };
  test.each<[string, Partial<NeededFacts>, NeededReason | null]>([
    ['not needed', {}, null],
    ['needed after all', { part: { isNeeded: false }, isNeeded: true }, null],
    ['not needed, twice', { part: { isNeeded: false } }, 'said-already'],
    ['needed after all, twice', { isNeeded: true }, 'said-already'],
    ['of a part it does not take', { part: null }, 'not-to-come'],
    ['of a unit that nobody has looked at', { stage: 'arrived' }, 'wrong-stage'],
    ['of one that is proved', { stage: 'proving' }, 'wrong-stage'],
  ])('%s', (_name, some, reason) => {
    const answer = maySayIfNeeded({ ...may, ...some });
    expect(answer).toEqual(reason === null ? { allowed: true } : { allowed: false, reason });
  });

  test('is open from the first look until it is proved', () => {
    expect(STAGES.filter((stage) => NEEDED_STAGES.includes(stage))).toEqual([
      'assessing',
      'awaiting-approval',
      'awaiting-parts',
      'on-bench',
    ]);
  });
});

test('the history says which part', () => {
  expect(eventLine('part-not-needed', { partId: 's', part: 'Socket' })).toBe('Not needed: Socket');
  expect(eventLine('part-needed', { partId: 's', part: 'Socket' })).toBe('Needed after all: Socket');
});
