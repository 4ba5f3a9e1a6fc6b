import { expect, it } from 'vitest';
import type { Ruling } from '@/lib/warranty/rules/causes';
import { repairAfterAll } from '@/lib/warranty/rules/repair-after-all';

const move = (fromStage: string, toStage: string) => ({ fromStage, toStage });
const WITHDRAWN = [move('assessing', 'declined')];
const PACKED = [...WITHDRAWN, move('declined', 'ready')];
const PROVED = [move('on-bench', 'proving'), move('proving', 'ready')];
const anew = { withdrawnAt: null };

it.each<[string, string, ReturnType<typeof move>[], Ruling, object]>([
  ['one that covers nothing changes nothing', 'declined', WITHDRAWN, 'not-covered', {}],
  [
    'covered, and it waits to be packed unrepaired',
    'declined',
    WITHDRAWN,
    'covered',
    { from: 'declined', to: 'assessing', set: { ...anew, readyAt: null } },
  ],
  [
    'covered in part, and it is packed unrepaired',
    'ready',
    PACKED,
    'partly',
    { from: 'ready', to: 'assessing', set: { ...anew, readyAt: null } },
  ],
  ['covered, and it is ready because it was repaired', 'ready', PROVED, 'covered', { set: anew }],
  ['covered, as a claim is ruled on as a rule', 'assessing', [], 'covered', { set: anew }],
])('%s', (_name, stage, events, ruling, expected) => {
  expect(repairAfterAll({ stage, events }, ruling)).toEqual(expected);
});
