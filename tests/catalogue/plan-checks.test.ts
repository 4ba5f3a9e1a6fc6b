import { describe, expect, test } from 'vitest';
import type { CheckDraft } from '@/lib/bench/rules/check-problems';
import {
  type CheckCells,
  type CheckColumn,
  type Connector,
  checkRows,
  type KnownSheet,
} from '@/lib/catalogue/rules/check-file';
import { planChecks } from '@/lib/catalogue/rules/plan-checks';

const connectors: Connector[] = [
  { key: 'usb-type-c', name: 'USB Type-C', isOffered: true },
  { key: 'id-old', name: 'Gull dock', isOffered: false },
  { key: 'id-new', name: 'Gull dock', isOffered: true },
];

const blank: Omit<CheckDraft, 'kind' | 'label'> = {
  help: '',
  unit: null,
  low: null,
  high: null,
  choices: [],
  passing: [],
  lesson: null,
  caution: null,
  pinTable: null,
};
const checks: CheckDraft[] = [
  { ...blank, kind: 'tick', label: 'Every control works', help: 'Ten minutes' },
  {
    ...blank,
    kind: 'reading',
    label: 'Voltage at the socket',
    unit: 'V',
    low: 4.75,
    high: 5.25,
    lesson: 'C0000001',
  },
  { ...blank, kind: 'choice', label: 'Noise', choices: ['silent', 'hiss', 'hum'], passing: ['silent'] },
  { ...blank, kind: 'connector', label: 'Pins', pinTable: 'usb-type-c', caution: 'hot-air' },
];
const sheet = (repairAddress: string, drafts: CheckDraft[] = checks): KnownSheet => ({
  repairId: `id-${repairAddress}`,
  modelAddress: 'tideline-gull',
  repairAddress,
  version: 3,
  checks: drafts,
});
const known = [sheet('usb-socket'), sheet('midi', checks.slice(0, 1))];

type Row = { row: number; cells: CheckCells };
const own: Row[] = checkRows(known, connectors).map((cells, i) => ({ row: i + 2, cells }));
const plan = (rows: Row[]) => planChecks({ rows, known, connectors });
const edited = (at: number, cells: Partial<CheckCells>) =>
  own.map((row, i) => (i === at ? { ...row, cells: { ...row.cells, ...cells } } : row));
const places = (rows: Row[], order: number[]) =>
  order.map((at, i): Row => {
    const { row = 0, cells } = rows[at] ?? {};
    return { row, cells: { ...(cells as CheckCells), place: String(i + 1) } };
  });

test('the sheets’ own rows change nothing', () => {
  expect(own).toHaveLength(5);
  expect(plan(own)).toEqual({ sheets: [], unchanged: 2, problems: [] });
});

test('a repair without rows keeps its sheet', () => {
  expect(plan(own.slice(4))).toEqual({ sheets: [], unchanged: 1, problems: [] });
});

describe('a sheet', () => {
  test('that changes gets its next version as a whole, and the change is shown by its cells', () => {
    const found = plan(edited(1, { high: '5,2' }));
    expect(found).toMatchObject({ unchanged: 1, problems: [] });
    expect(found.sheets).toEqual([
      {
        row: 2,
        repairId: 'id-usb-socket',
        modelAddress: 'tideline-gull',
        repairAddress: 'usb-socket',
        version: 4,
        checks: checks.map((check, i) => (i === 1 ? { ...check, high: 5.2 } : check)),
        changes: [
          {
            row: 3,
            change: 'changed',
            label: 'Voltage at the socket',
            fields: [{ column: 'high', before: '5.25', after: '5.2' }],
          },
        ],
      },
    ]);
  });

  test('loses the check that has no row', () => {
    const [change] = plan(own.filter((_, i) => i !== 1)).sheets;
    expect(change?.checks).toEqual(checks.filter((_, i) => i !== 1));
    expect(change?.changes).toEqual([
      { row: null, change: 'off', label: 'Voltage at the socket', fields: [] },
    ]);
  });

  test('with a check put first shows that one alone', () => {
    const [first] = own;
    if (!first) throw new Error('there are rows');
    const fresh = { row: 9, cells: { ...first.cells, label: 'Label is legible', place: '1' } };
    const rest = own
      .slice(0, 4)
      .map((row, i) => ({ ...row, cells: { ...row.cells, place: String(10 * i + 2) } }));
    const [change] = plan([...rest, fresh]).sheets;
    expect(change?.checks.map(({ label }) => label)).toEqual([
      'Label is legible',
      ...checks.map(({ label }) => label),
    ]);
    expect(change?.changes).toEqual([{ row: 9, change: 'added', label: 'Label is legible', fields: [] }]);
  });

  test('in another order shows the places', () => {
    const [change] = plan(places(own.slice(0, 4), [1, 0, 2, 3])).sheets;
    expect(change?.changes).toEqual([
      {
        row: 3,
        change: 'changed',
        label: 'Voltage at the socket',
        fields: [{ column: 'place', before: '2', after: '1' }],
      },
      {
        row: 2,
        change: 'changed',
        label: 'Every control works',
        fields: [{ column: 'place', before: '1', after: '2' }],
      },
    ]);
  });

  test('whose check has a new label shows one change, not one off and one new', () => {
    const [change] = plan(edited(2, { label: 'Noise at the headphones' })).sheets;
    expect(change?.changes).toEqual([
      {
        row: 4,
        change: 'changed',
        label: 'Noise',
        fields: [{ column: 'label', before: 'Noise', after: 'Noise at the headphones' }],
      },
    ]);
  });
});

describe('faults', () => {
  test.each<[string, number, Partial<CheckCells>, CheckColumn | null]>([
    ['no place', 0, { place: '' }, 'place'],
    ['a place with a point', 0, { place: '1.5' }, 'place'],
    ['a place that is taken', 1, { place: '1' }, 'place'],
    ['a kind nobody knows', 0, { kind: 'photo' }, 'kind'],
    ['no label', 0, { label: '' }, 'label'],
    ['a label that is too long', 0, { label: 'x'.repeat(161) }, 'label'],
    ['a help that is too long', 0, { help: 'x'.repeat(201) }, 'help'],
    ['a reading without a unit', 1, { unit: '' }, 'unit'],
    ['a reading without limits', 1, { low: '', high: '' }, 'low'],
    ['limits that cross', 1, { low: '6' }, 'low'],
    ['a limit that is no number', 1, { low: '4.7 V' }, 'low'],
    ['a tick with a unit', 0, { unit: 'V' }, 'unit'],
    ['a choice with a limit', 2, { high: '3' }, 'high'],
    ['a tick with answers', 0, { choices: 'yes; no' }, 'choices'],
    ['a tick with answers that pass', 0, { passing: 'yes' }, 'passing'],
    ['no answer that passes', 2, { passing: '' }, 'passing'],
    ['a choice that could not fail', 2, { passing: 'silent; hiss; hum' }, 'passing'],
    ['a passing answer that is none', 2, { passing: 'quiet' }, 'passing'],
    ['eleven answers that fail', 2, { choices: `silent; ${'abcdefghijk'.split('').join(';')}` }, 'choices'],
    ['a connector sheet without its connector', 3, { connector: '' }, 'connector'],
    ['a connector nobody knows', 3, { connector: 'USB Type-D' }, 'connector'],
    ['a reading with a connector', 1, { connector: 'USB Type-C' }, 'connector'],
    ['a caution nobody knows', 3, { caution: 'wind' }, 'caution'],
    ['a claim that taught nothing here', 0, { lesson: 'C0000002' }, 'lesson'],
  ])('%s is told at its cell', (_, at, cells, column) => {
    const { problems, sheets } = plan(edited(at, cells));
    expect(problems).toMatchObject([{ row: at + 2, column }]);
    expect(sheets).toEqual([]);
  });

  test.each<[string, number, Partial<CheckCells>, CheckColumn | null]>([
    ['a model that is not there', 0, { modelAddress: 'tideline-tern' }, 'modelAddress'],
    ['no model', 0, { modelAddress: '' }, 'modelAddress'],
    ['a repair that the model has not', 0, { repairAddress: 'fader' }, 'repairAddress'],
    ['no repair', 0, { repairAddress: '' }, 'repairAddress'],
  ])('%s is told at its cell', (_, at, cells, column) => {
    expect(plan(edited(at, cells)).problems).toMatchObject([{ row: at + 2, column }]);
  });

  test('all of a row are told, and each cell once', () => {
    const { problems } = plan(edited(1, { place: '0', low: 'low', high: '', unit: '' }));
    expect(problems.map(({ row, column }) => [row, column])).toEqual([
      [3, 'place'],
      [3, 'unit'],
      [3, 'low'],
    ]);
  });

  test('one answer alone is too few, and could not fail', () => {
    const { problems } = plan(edited(2, { choices: 'silent' }));
    expect(problems.map(({ column }) => column)).toEqual(['choices', 'passing']);
  });

  test('the sixty-first check of a sheet', () => {
    const [first] = own;
    if (!first) throw new Error('there are rows');
    const rows = (many: number) =>
      Array.from({ length: many }, (_, i) => ({
        row: i + 2,
        cells: { ...first.cells, label: `Check ${i}`, place: String(i + 1) },
      }));
    expect(plan(rows(60)).problems).toEqual([]);
    expect(plan(rows(61)).problems).toMatchObject([{ row: 62, column: null }]);
  });
});

describe('what a person may write', () => {
  test.each<[number, Partial<CheckCells>]>([
    [0, { kind: 'Tick' }],
    [1, { low: '4,75', high: '5.250' }],
    [3, { connector: 'usb-type-c' }],
    [3, { connector: 'usb type-c' }],
    [3, { caution: 'HOT-AIR' }],
    [2, { choices: 'silent;hiss;hum;' }],
  ])('row %i with %o is the same check', (at, cells) => {
    expect(plan(edited(at, cells))).toEqual({ sheets: [], unchanged: 2, problems: [] });
  });

  test('a name means the table in use, and one that was replaced stands by its key', () => {
    const cellOf = (pinTable: string) =>
      checkRows([sheet('x', [{ ...blank, kind: 'connector', label: 'Pins', pinTable }])], connectors)[0]
        ?.connector;
    expect(cellOf('id-new')).toBe('Gull dock');
    expect(cellOf('id-old')).toBe('id-old');
    expect(cellOf('usb-type-c')).toBe('USB Type-C');
    const [change] = plan(edited(3, { connector: 'gull dock' })).sheets;
    expect(change?.checks[3]?.pinTable).toBe('id-new');
  });

  test('a lesson may be let go', () => {
    const [change] = plan(edited(1, { lesson: '' })).sheets;
    expect(change?.checks[1]?.lesson).toBeNull();
  });
});
