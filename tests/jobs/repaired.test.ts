import { describe, expect, it } from 'vitest';
import { isRepaired, REPAIRED_BY_MOVES_TO } from '@/lib/jobs/rules/repaired';
import { type MoveKey, moveOf, type Stage } from '@/lib/jobs/rules/stages';

/** The stages a job went through by these moves, from the one in which it arrived. */
function after(...keys: MoveKey[]) {
  let stage: Stage = 'arrived';
  return keys.map((key) => {
    const { from, to } = moveOf(key);
    if (!from.includes(stage)) throw new Error(`${key} does not leave ${stage}`);
    const event = { fromStage: stage, toStage: to };
    stage = to;
    return event;
  });
}

describe('a unit goes back repaired', () => {
  const proved = ['assess', 'start-bench', 'prove', 'pass-checks'] as const;

  it.each<[string, MoveKey[], boolean]>([
    ['when its checks passed', [...proved], true],
    ['also when it was set aside since', [...proved, 'set-aside', 'take-up-again'], true],
    [
      'when a paid repair was contested and the claim is ruled not covered again',
      [...proved, 'contest', 'return-unrepaired'],
      true,
    ],
    ['not when the claim was ruled not covered', ['assess', 'return-unrepaired'], false],
    ['not when the price was declined', ['assess', 'ask-approval', 'decline', 'pack-unrepaired'], false],
    [
      'not when the customer withdrew while a check had failed',
      ['assess', 'start-bench', 'prove', 'fail-check', 'withdraw', 'pack-unrepaired'],
      false,
    ],
    ['not while work is done again on what was proved', [...proved, 'reopen-work', 'prove'], false],
    ['again once that was proved', [...proved, 'reopen-work', 'prove', 'pass-checks'], true],
    ['not while it is being proved', ['assess', 'start-bench', 'prove'], false],
    [
      'not when a declined unit was set aside and taken up again',
      ['assess', 'ask-approval', 'decline', 'pack-unrepaired', 'set-aside', 'take-up-again'],
      false,
    ],
    [
      'not when a claim was opened again on the bench, contested there and ruled not covered',
      [...proved, 'reopen-work', 'contest', 'return-unrepaired'],
      false,
    ],
  ])('%s', (_, keys, expected) => {
    const events = after(...keys);
    expect(isRepaired([{ fromStage: null, toStage: null }, ...events])).toBe(expected);
    // What a query that leaves out all other moves reads says the same.
    expect(isRepaired(events.filter(({ toStage }) => REPAIRED_BY_MOVES_TO.includes(toStage)))).toBe(expected);
  });
});
