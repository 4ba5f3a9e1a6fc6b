import { z } from 'zod';
import { CAUTION_KEYS } from '@/lib/bench/rules/cautions';
import {
  CHECK_PROBLEM_SENTENCES,
  type CheckDraft,
  type CheckProblem,
  checkProblems,
} from '@/lib/bench/rules/check-problems';
import { CHECK_KINDS, readReading } from '@/lib/bench/rules/checks';
import { LIMITS } from '@/lib/catalogue/rules/list-limits';
import { line, lines, optionalLine } from '../../../fields';

const limit = z
  .string()
  .optional()
  .transform((text, context) => {
    if (text === undefined || text.trim() === '') return null;
    const reading = readReading(text);
    if (reading !== null) return reading;
    context.addIssue({ code: 'custom', message: 'Enter a number, like 4.75' });
    return z.NEVER;
  });

const FIELD_OF: Record<CheckProblem, string> = {
  'no-label': 'label',
  'no-unit': 'unit',
  'no-limits': 'low',
  'limits-crossed': 'low',
  'too-few-choices': 'passing',
  'same-choice-twice': 'failing',
  'nothing-passes': 'passing',
  'nothing-fails': 'failing',
  'passing-not-a-choice': 'passing',
  'no-pin-table': 'pinTable',
};

/** A check as the form gives it: what its kind does not use is dropped, what could not fail is refused at its field. */
export const checkSchema = z
  .object({
    kind: z.enum(CHECK_KINDS, 'Choose what is recorded'),
    label: line('Say what is checked', LIMITS.check),
    help: optionalLine,
    unit: optionalLine,
    low: limit,
    high: limit,
    passing: lines(LIMITS.answers),
    failing: lines(LIMITS.answers),
    caution: z.enum(CAUTION_KEYS).optional(),
    pinTable: z.string().max(60).optional(),
  })
  .transform((typed, context): CheckDraft => {
    const check = draftOf(typed);
    for (const problem of checkProblems(check)) {
      context.addIssue({
        code: 'custom',
        path: [FIELD_OF[problem]],
        message: CHECK_PROBLEM_SENTENCES[problem],
      });
    }
    return check;
  });

type Typed = Omit<CheckDraft, 'unit' | 'choices' | 'lesson' | 'caution' | 'pinTable'> & {
  unit: string;
  failing: string[];
  caution?: string | undefined;
  pinTable?: string | undefined;
};

function draftOf({
  kind,
  label,
  help,
  unit,
  low,
  high,
  passing,
  failing,
  caution,
  pinTable,
}: Typed): CheckDraft {
  const isReading = kind === 'reading';
  const isChoice = kind === 'choice';
  return {
    kind,
    label,
    help,
    unit: isReading ? unit : null,
    low: isReading ? low : null,
    high: isReading ? high : null,
    choices: isChoice ? [...passing, ...failing] : [],
    passing: isChoice ? passing : [],
    lesson: null,
    caution: caution ?? null,
    pinTable: kind === 'connector' ? (pinTable ?? null) : null,
  };
}
