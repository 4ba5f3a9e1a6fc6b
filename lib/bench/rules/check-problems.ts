import { CHECK_KINDS, type CheckKind } from './checks';

/** A check as it is written on a sheet, before it has an id. */
export type CheckDraft = {
  kind: CheckKind;
  label: string;
  help: string;
  unit: string | null;
  low: number | null;
  high: number | null;
  choices: string[];
  passing: string[];
  /** Number of the claim that taught this check. */
  lesson: string | null;
  /** Key of cautions.ts. */
  caution: string | null;
  /** Of a connector sheet: key of a shipped pin table, or id of one of the workshop's own. */
  pinTable?: string | null;
};

export type CheckProblem =
  | 'no-label'
  | 'no-unit'
  | 'no-limits'
  | 'limits-crossed'
  | 'too-few-choices'
  | 'same-choice-twice'
  | 'nothing-passes'
  | 'nothing-fails'
  | 'passing-not-a-choice'
  | 'no-pin-table';

/**
 * What is wrong with a check before it can be put on a sheet; an empty list means that it can. A check that could not fail
 * (a reading without limits, a choice of which every answer passes) proves nothing and is refused.
 * Example: a reading in V with low 5.25 and high 4.75 gives ['limits-crossed'].
 */
export function checkProblems(check: CheckDraft): CheckProblem[] {
  const problems: CheckProblem[] = check.label.trim() === '' ? ['no-label'] : [];
  if (check.kind === 'reading') return [...problems, ...readingProblems(check)];
  if (check.kind === 'choice') return [...problems, ...choiceProblems(check)];
  if (check.kind === 'connector' && !check.pinTable) return [...problems, 'no-pin-table'];
  return problems;
}

function readingProblems({ unit, low, high }: CheckDraft): CheckProblem[] {
  const problems: CheckProblem[] = [];
  if (!unit?.trim()) problems.push('no-unit');
  if (low === null && high === null) problems.push('no-limits');
  if (low !== null && high !== null && low > high) problems.push('limits-crossed');
  return problems;
}

function choiceProblems({ choices, passing }: CheckDraft): CheckProblem[] {
  const problems: CheckProblem[] = [];
  if (choices.length < 2) problems.push('too-few-choices');
  if (new Set(choices).size < choices.length) problems.push('same-choice-twice');
  if (passing.length === 0) problems.push('nothing-passes');
  if (passing.some((choice) => !choices.includes(choice))) problems.push('passing-not-a-choice');
  else if (choices.every((choice) => passing.includes(choice))) problems.push('nothing-fails');
  return problems;
}

export const CHECK_PROBLEM_SENTENCES: Record<CheckProblem, string> = {
  'no-label': 'Say what is checked.',
  'no-unit': 'Give the unit of the reading.',
  'no-limits': 'Give a lowest or a highest reading that passes; without one the check could not fail.',
  'limits-crossed': 'The lowest reading is above the highest.',
  'too-few-choices': 'Give at least two choices.',
  'same-choice-twice': 'A choice is named twice.',
  'nothing-passes': 'Say which choices pass.',
  'nothing-fails': 'Leave at least one choice that fails; without one the check could not fail.',
  'passing-not-a-choice': 'Every passing choice must be one of the choices.',
  'no-pin-table': 'Choose the connector; its pin table says what to probe.',
};

export function isCheckKind(text: string): text is CheckKind {
  return CHECK_KINDS.some((kind) => kind === text);
}
