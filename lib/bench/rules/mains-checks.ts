import type { CheckDraft } from './check-problems';

const base = {
  kind: 'reading',
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: null,
  caution: 'mains-test',
} as const;

// Below nothing no resistance or current can be: the leads were not zeroed. Limits of EN 50678 (VDE 0701) for tests after repair: all values from memory, and said so on the sheet.
const LIMITS = 'Limit from memory of EN 50678; check it against the standard in force.';
const RESISTANCE = {
  class1: { label: 'Insulation, live parts to touchable metal', low: 1, unit: 'MΩ' },
  class2: { label: 'Insulation, live parts to touchable parts', low: 2, unit: 'MΩ' },
};

/** The template of checks for mains equipment after repair, by protection class I (protective conductor) or II (double insulation). */
export function mainsChecks(protectionClass: 1 | 2): CheckDraft[] {
  const look: CheckDraft = {
    ...base,
    kind: 'tick',
    unit: null,
    choices: [],
    passing: [],
    label: 'Lead, plug, case and cord grip are whole',
    help: 'Look before you measure.',
  };
  const insulation = protectionClass === 1 ? RESISTANCE.class1 : RESISTANCE.class2;
  const readings = [
    insulation,
    ...(protectionClass === 1
      ? [
          { label: 'Protective conductor, cable up to 5 m', low: 0, high: 0.3, unit: 'Ω' },
          { label: 'Protective conductor current', low: 0, high: 3.5, unit: 'mA' },
        ]
      : []),
    { label: 'Touch current', low: 0, high: 0.5, unit: 'mA' },
  ];
  return [
    look,
    ...readings.map((reading) => ({ ...base, choices: [], passing: [], help: LIMITS, ...reading })),
  ];
}

/** Whether a check is one of electrical safety: those carry the caution that says who may sign them. */
export function isMainsCheck(check: { caution: string | null }): boolean {
  return check.caution === base.caution;
}

/** Whether a sheet holds electrical safety checks already. */
export function hasMainsChecks(checks: readonly { caution: string | null }[]): boolean {
  return checks.some(isMainsCheck);
}
