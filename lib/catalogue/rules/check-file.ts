import { CAUTION_KEYS } from '@/lib/bench/rules/cautions';
import {
  CHECK_PROBLEM_SENTENCES,
  type CheckDraft,
  type CheckProblem,
  checkProblems,
} from '@/lib/bench/rules/check-problems';
import { CHECK_KINDS, type CheckKind, readReading } from '@/lib/bench/rules/checks';
import { type CellTell, cellReader } from './cell-reader';
import type { Layout } from './file-layout';
import { joinEntries } from './list-cells';
import { LIMITS } from './list-limits';

/*
 * Check sheets as one table: one row for each check. The two addresses find the repair, and all rows of a repair are its whole sheet.
 */

export const CHECK_LAYOUT = [
  { key: 'modelAddress', head: 'Model address', kind: 'text' },
  { key: 'repairAddress', head: 'Repair address', kind: 'text' },
  { key: 'place', head: 'Place', kind: 'text' },
  { key: 'kind', head: 'Recorded', kind: 'text' },
  { key: 'label', head: 'Check', kind: 'text' },
  { key: 'help', head: 'How to do it', kind: 'text' },
  { key: 'unit', head: 'Unit', kind: 'text' },
  { key: 'low', head: 'Lowest', kind: 'text' },
  { key: 'high', head: 'Highest', kind: 'text' },
  { key: 'choices', head: 'Answers', kind: 'list' },
  { key: 'passing', head: 'Answers that pass', kind: 'list' },
  { key: 'connector', head: 'Connector', kind: 'text' },
  { key: 'caution', head: 'Caution', kind: 'text' },
  { key: 'lesson', head: 'Taught by claim', kind: 'text' },
] as const satisfies Layout<string>;

export type CheckColumn = (typeof CHECK_LAYOUT)[number]['key'];
export type CheckCells = Record<CheckColumn, string>;
export const CHECK_COLUMNS = CHECK_LAYOUT.map(({ key }) => key);

/** Pin tables that a check may name: what the check keeps, and what a person calls it. */
export type Connector = { key: string; name: string; isOffered: boolean };

/** What the newest version of a repair's sheet asks for. */
export type KnownSheet = {
  repairId: string;
  modelAddress: string;
  repairAddress: string;
  /** 0 where there is no sheet yet. */
  version: number;
  checks: CheckDraft[];
};

/** A check without what its kind does not use, so that a row kept by another form is not told as a fault. */
export function plainCheck(check: CheckDraft): CheckDraft {
  const { kind, label, help, lesson, caution } = check;
  const isReading = kind === 'reading';
  const isChoice = kind === 'choice';
  return {
    kind,
    label,
    help,
    unit: isReading ? check.unit : null,
    low: isReading ? check.low : null,
    high: isReading ? check.high : null,
    choices: isChoice ? check.choices : [],
    passing: isChoice ? check.passing : [],
    lesson,
    caution,
    pinTable: kind === 'connector' ? (check.pinTable ?? null) : null,
  };
}

/** The cells of a check, by column, without the addresses of its repair. */
export function checkCells(check: CheckDraft, place: number, connectors: readonly Connector[]) {
  return {
    place: String(place),
    kind: check.kind,
    label: check.label,
    help: check.help,
    unit: check.unit ?? '',
    low: numberCell(check.low),
    high: numberCell(check.high),
    choices: joinEntries(check.choices),
    passing: joinEntries(check.passing),
    connector: connectorCell(check.pinTable ?? null, connectors),
    caution: check.caution ?? '',
    lesson: check.lesson ?? '',
  } satisfies Partial<CheckCells>;
}

/** Every sheet as rows, in the order given. */
export function checkRows(sheets: readonly KnownSheet[], connectors: readonly Connector[]): CheckCells[] {
  return sheets.flatMap(({ modelAddress, repairAddress, checks }) =>
    checks.map((check, i) => ({
      modelAddress,
      repairAddress,
      ...checkCells(plainCheck(check), i + 1, connectors),
    })),
  );
}

/** A check with the place that its row gives it; gaps between places do not matter. */
export type PlacedCheck = { place: number; check: CheckDraft };

const PROBLEM_COLUMN: Record<CheckProblem, CheckColumn> = {
  'no-label': 'label',
  'no-unit': 'unit',
  'no-limits': 'low',
  'limits-crossed': 'low',
  'too-few-choices': 'choices',
  'same-choice-twice': 'choices',
  'nothing-passes': 'passing',
  'nothing-fails': 'passing',
  'passing-not-a-choice': 'passing',
  'no-pin-table': 'connector',
};

// What each column is for; in a row of another kind a text there would be lost in silence.
const ONLY: readonly [CheckColumn, CheckKind, string][] = [
  ['unit', 'reading', 'Only a reading has a unit'],
  ['low', 'reading', 'Only a reading has limits'],
  ['high', 'reading', 'Only a reading has limits'],
  ['choices', 'choice', 'Only a choice has answers'],
  ['passing', 'choice', 'Only a choice has answers'],
  ['connector', 'connector', 'Only a connector sheet names a connector'],
];

/**
 * The check that a row says; null, and every fault told, where a cell cannot be read or the check could not fail. `lessons` are the
 * claims that taught a check of this sheet: a file may keep or drop such a number, and only a claim's own page gives a new one.
 */
export function readCheckRow(
  cells: CheckCells,
  known: { connectors: readonly Connector[]; lessons: readonly string[] },
  tell: CellTell<CheckColumn>,
): PlacedCheck | null {
  const told = new Set<CheckColumn>();
  const read = cellReader<CheckColumn>(cells, (column, message) => {
    told.add(column);
    tell(column, message);
  });
  const place = read.whole('place', 1, LIMITS.place);
  const kind = read.oneOf('kind', CHECK_KINDS);
  const check: CheckDraft = {
    kind: kind ?? 'tick',
    label: read.optional('label', LIMITS.check),
    help: read.optional('help'),
    unit: read.optional('unit') || null,
    low: limit('low', cells, read.wrong),
    high: limit('high', cells, read.wrong),
    choices: read.entries('choices'),
    passing: read.entries('passing'),
    lesson: cells.lesson || null,
    caution: cells.caution === '' ? null : read.oneOf('caution', CAUTION_KEYS),
    pinTable: connector(cells, known.connectors, read.wrong),
  };
  const failing = check.choices.filter((choice) => !check.passing.includes(choice));
  if (check.passing.length > LIMITS.answers)
    read.wrong('passing', `Give ${LIMITS.answers} answers that pass or fewer`);
  if (failing.length > LIMITS.answers)
    read.wrong('choices', `Give ${LIMITS.answers} answers that fail or fewer`);
  if (check.lesson !== null && !known.lessons.includes(check.lesson))
    read.wrong('lesson', 'No check of this sheet was taught by that claim; leave it empty');
  if (kind !== null) {
    for (const [column, of, message] of ONLY)
      if (of !== kind && cells[column] !== '' && !told.has(column)) read.wrong(column, message);
    for (const problem of checkProblems(check)) {
      const column = PROBLEM_COLUMN[problem];
      if (!told.has(column)) read.wrong(column, CHECK_PROBLEM_SENTENCES[problem]);
    }
  }
  return read.isSound() ? { place, check } : null;
}

function limit(column: 'low' | 'high', cells: CheckCells, wrong: CellTell<CheckColumn>): number | null {
  if (cells[column] === '') return null;
  const reading = readReading(cells[column]);
  if (reading === null) wrong(column, 'Enter a number, like 4.75, or nothing');
  return reading;
}

/** A limit in digits that readReading takes, however small: 1e-7 is '0.0000001'. */
export function numberCell(value: number | null): string {
  if (value === null) return '';
  const [digits = '', exponent] = String(value).split('e');
  if (exponent === undefined) return digits;
  const [sign, whole = '', part = ''] = /^(-?)(\d+)\.?(\d*)$/.exec(digits)?.slice(1) ?? [];
  const places = Number(exponent) - part.length;
  const all = `${whole}${part}`;
  if (places >= 0) return `${sign}${all}${'0'.repeat(places)}`;
  const padded = all.padStart(1 - places, '0');
  return `${sign}${padded.slice(0, places)}.${padded.slice(places)}`;
}

function connector(
  { connector: text }: CheckCells,
  connectors: readonly Connector[],
  wrong: CellTell<CheckColumn>,
): string | null {
  if (text === '') return null;
  const found = connectorOf(text, connectors);
  if (found === null) wrong('connector', `There is no pin table called ${text}`);
  return found;
}

/** The pin table that a text means: by its key, or by the name of the only one in use that has it. */
export function connectorOf(text: string, connectors: readonly Connector[]): string | null {
  if (connectors.some(({ key }) => key === text)) return text;
  const named = connectors.filter(
    ({ name, isOffered }) => isOffered && name.trim().toLowerCase() === text.toLowerCase(),
  );
  return named.length === 1 ? (named[0]?.key ?? null) : null;
}

// By name where that leads back to this very table; one that was replaced stands by its key.
function connectorCell(key: string | null, connectors: readonly Connector[]): string {
  if (key === null) return '';
  const name = connectors.find((each) => each.key === key)?.name.trim() ?? key;
  return connectorOf(name, connectors) === key ? name : key;
}
