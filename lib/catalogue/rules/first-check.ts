import type { CheckDraft } from '@/lib/bench/rules/check-problems';

// A sheet without checks proves nothing, so a new repair starts with the one that fits every unit.
export const FIRST_CHECK: CheckDraft = {
  kind: 'tick',
  label: 'Every control, socket and light works, tried for ten minutes',
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
};
