import { expect, it } from 'vitest';
import { CAUSES } from '@/lib/warranty/rules/causes';
import { isDoneAsCovered } from '@/lib/warranty/rules/done-as-covered';

const [cause] = CAUSES;
const ruled = (ruling: string) => event('claim-ruled', {}, { claim: 'C', cause, ruling, isFinal: true });
const proved = event('moved', { fromStage: 'proving', toStage: 'ready' });
const withdrawn = event('withdrawn', { fromStage: 'on-bench', toStage: 'declined' });
const reopened = event('claim-reopened', { fromStage: 'ready', toStage: 'assessing' });
const contested = event('claim-contested', { fromStage: 'ready', toStage: 'assessing' });

function event(kind: string, o: { fromStage?: string; toStage?: string }, data: unknown = {}) {
  return { kind, data, fromStage: o.fromStage ?? null, toStage: o.toStage ?? null };
}

it.each<[string, ReturnType<typeof event>[], boolean]>([
  ['covered in part and proved', [ruled('partly'), proved], true],
  ['covered and proved', [ruled('covered'), proved], true],
  ['covered in part, proved, and taken back', [ruled('partly'), proved, reopened], true],
  ['covered in part, proved, and contested', [ruled('partly'), proved, contested], true],
  ['covered in part, and on the bench', [ruled('partly')], false],
  ['paid for, and proved', [ruled('not-covered'), proved], false],
  [
    'paid for, proved, and covered in part by a later ruling',
    [ruled('not-covered'), proved, contested, ruled('partly'), reopened],
    false,
  ],
  [
    'covered in part after a second look took another ruling back',
    [ruled('not-covered'), ruled('partly'), proved],
    true,
  ],
  ['proved, and taken out again by a withdrawal', [ruled('partly'), proved, withdrawn], false],
])('a repair of a claim, %s', (_name, events, expected) => {
  expect(isDoneAsCovered(events)).toBe(expected);
});
