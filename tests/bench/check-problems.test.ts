import { expect, test } from 'vitest';
import { CAUTION_KEYS, cautionOf, FIRST_COME, isCautionKey } from '@/lib/bench/rules/cautions';
import { CHECK_PROBLEM_SENTENCES, type CheckDraft, checkProblems } from '@/lib/bench/rules/check-problems';
import { connectorChecks } from '@/lib/bench/rules/connector-sheet';
import { hasMainsChecks, mainsChecks } from '@/lib/bench/rules/mains-checks';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { SOLDER_FILLS, solderFillCheck } from '@/lib/bench/rules/solder-fill';

const reading: CheckDraft = {
  kind: 'reading',
  label: 'Supply',
  help: '',
  unit: 'V',
  low: 4.75,
  high: 5.25,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
};
const choice: CheckDraft = {
  ...reading,
  kind: 'choice',
  unit: null,
  choices: ['clean', 'hum'],
  passing: ['clean'],
};

test.each([
  { name: 'a sound reading', check: reading, problems: [] },
  { name: 'a sound choice', check: choice, problems: [] },
  { name: 'equal limits', check: { ...reading, low: 5, high: 5 }, problems: [] },
  { name: 'no label', check: { ...reading, label: '  ' }, problems: ['no-label'] },
  { name: 'no unit', check: { ...reading, unit: '' }, problems: ['no-unit'] },
  { name: 'no limits', check: { ...reading, low: null, high: null }, problems: ['no-limits'] },
  { name: 'crossed limits', check: { ...reading, low: 6 }, problems: ['limits-crossed'] },
  {
    name: 'one choice',
    check: { ...choice, choices: ['clean'] },
    problems: ['too-few-choices', 'nothing-fails'],
  },
  {
    name: 'a choice twice',
    check: { ...choice, choices: ['clean', 'hum', 'hum'] },
    problems: ['same-choice-twice'],
  },
  { name: 'nothing passes', check: { ...choice, passing: [] }, problems: ['nothing-passes'] },
  { name: 'everything passes', check: { ...choice, passing: ['clean', 'hum'] }, problems: ['nothing-fails'] },
  { name: 'a stranger passes', check: { ...choice, passing: ['loud'] }, problems: ['passing-not-a-choice'] },
])('$name: $problems', ({ check, problems }) => {
  expect(checkProblems(check)).toEqual(problems);
  for (const problem of checkProblems(check)) expect(CHECK_PROBLEM_SENTENCES[problem]).toMatch(/\.$/);
});

test('every ready-made check can fail and names a caution that exists', () => {
  const made = [
    ...PIN_TABLES.flatMap(connectorChecks),
    ...mainsChecks(1),
    ...mainsChecks(2),
    ...SOLDER_FILLS.flatMap(({ key }) => solderFillCheck(key) ?? []),
  ];
  expect(made.length).toBeGreaterThan(15);
  for (const check of made) {
    expect(checkProblems(check)).toEqual([]);
    expect(isCautionKey(check.caution ?? '')).toBe(true);
  }
});

test('a connector sheet names its pin table', () => {
  for (const table of PIN_TABLES) expect(connectorChecks(table)[0]).toMatchObject({ pinTable: table.key });
  expect(checkProblems({ ...reading, kind: 'connector', pinTable: null })).toEqual(['no-pin-table']);
});

test('every caution ends with what comes first', () => {
  expect(CAUTION_KEYS).toContain('lithium-cells');
  for (const key of CAUTION_KEYS) expect(cautionOf(key)?.text.endsWith(FIRST_COME)).toBe(true);
  expect(cautionOf('toString')).toBeNull();
  expect(cautionOf(null)).toBeNull();
});

// Values of EN 50678 / VDE 0701 from memory, as the sheet itself says.
test.each([
  { protectionClass: 1, limits: ['1 MΩ', '0.3 Ω', '3.5 mA', '0.5 mA'] },
  { protectionClass: 2, limits: ['2 MΩ', '0.5 mA'] },
] as const)('mains template of class $protectionClass', ({ protectionClass, limits }) => {
  const readings = mainsChecks(protectionClass).filter((check) => check.kind === 'reading');
  expect(readings.map((check) => `${check.high ?? check.low} ${check.unit}`)).toEqual(limits);
});

// IPC-A-610F Table 7-4; the thickness from which 1.2 mm is less than half the hole is 1.2 / 0.5.
test.each([
  { key: 'solder-fill-2', low: 75, help: 'class 2.' },
  { key: 'solder-fill-2-many', low: 50, help: 'thicker than 2.4 mm a fill of 1.2 mm is enough' },
  { key: 'solder-fill-2-plane', low: 50, help: 'hole at a copper plane.' },
  { key: 'solder-fill-3', low: 75, help: 'class 3.' },
])('$key asks for $low %', ({ key, low, help }) => {
  expect(solderFillCheck(key)).toMatchObject({
    kind: 'reading',
    unit: '%',
    low,
    high: 100,
    help: expect.stringContaining(help),
  });
});

test('class 1, which leaves the fill open, is not offered', () => {
  expect(solderFillCheck('solder-fill-1')).toBeNull();
});

test('a sheet knows its mains checks by who may sign them', () => {
  expect(hasMainsChecks(mainsChecks(2))).toBe(true);
  expect(hasMainsChecks([reading])).toBe(false);
});
