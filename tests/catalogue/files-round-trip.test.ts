import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CAUTION_KEYS } from '@/lib/bench/rules/cautions';
import { type CheckDraft, checkProblems } from '@/lib/bench/rules/check-problems';
import { readReading } from '@/lib/bench/rules/checks';
import { connectorChecks } from '@/lib/bench/rules/connector-sheet';
import { mainsChecks } from '@/lib/bench/rules/mains-checks';
import { PIN_TABLES } from '@/lib/bench/rules/pin-tables/all';
import { SOLDER_FILLS, solderFillCheck } from '@/lib/bench/rules/solder-fill';
import { readCsv, writeCsv } from '@/lib/catalogue/csv';
import { alignChecks } from '@/lib/catalogue/rules/align-checks';
import {
  CHECK_LAYOUT,
  type Connector,
  checkRows,
  type KnownSheet,
  numberCell,
  plainCheck,
} from '@/lib/catalogue/rules/check-file';
import { planChecks } from '@/lib/catalogue/rules/plan-checks';
import { planPolicies } from '@/lib/catalogue/rules/plan-policies';
import { type KnownPolicy, POLICY_LAYOUT, policyCells } from '@/lib/catalogue/rules/policy-file';
import { isSameSheet } from '@/lib/catalogue/rules/same';
import { HELD_RULES, START_EVENTS } from '@/lib/warranty/rules/terms';

// What a form can keep: trimmed, on one line, with whatever signs people paste.
const signs = fc.constantFrom(...'ab1 ;,"\'\\=+-@\t\rxé×', '＝', '😀');
const line = (least: number) =>
  fc
    .string({ unit: signs, minLength: least, maxLength: 14 })
    .map((text) => text.trim())
    .filter((text) => text.length >= least);
const entries = (least: number, most: number) =>
  fc.uniqueArray(line(1), { minLength: least, maxLength: most });

// Two of one name, one of them replaced; names that are another's key, or nothing but capitals apart.
const connectors: Connector[] = [
  { key: 'usb-type-c', name: 'USB Type-C', isOffered: true },
  { key: 'a', name: 'Dock', isOffered: false },
  { key: 'b', name: 'Dock', isOffered: true },
  { key: 'c', name: 'usb-type-c', isOffered: true },
  { key: 'd', name: 'lid; =1', isOffered: true },
  { key: 'e', name: 'LID; =1', isOffered: true },
];

const limit = fc
  .tuple(fc.boolean(), fc.nat(100_000_000), fc.nat(9))
  .map(([below, digits, places]) => ((below ? -1 : 1) * digits) / 10 ** places + 0);

const facts = {
  label: line(1),
  help: line(0),
  lesson: fc.constantFrom(null, 'C0000001', 'C0000002'),
  caution: fc.constantFrom(null, ...CAUTION_KEYS),
};
const bare = { unit: null, low: null, high: null, choices: [], passing: [], pinTable: null };
const check: fc.Arbitrary<CheckDraft> = fc.oneof(
  fc.record(facts).map((data) => ({ ...bare, ...data, kind: 'tick' as const })),
  fc
    .record({
      ...facts,
      unit: line(1),
      one: limit,
      other: limit,
      sides: fc.constantFrom('both', 'low', 'high'),
    })
    .map(({ one, other, sides, ...data }) => ({
      ...bare,
      ...data,
      kind: 'reading' as const,
      low: sides === 'high' ? null : Math.min(one, other),
      high: sides === 'low' ? null : Math.max(one, other),
    })),
  fc
    .record({ ...facts, passing: entries(1, 4), failing: entries(1, 4) })
    .map(({ passing, failing, ...data }) => ({
      ...bare,
      ...data,
      kind: 'choice' as const,
      passing,
      choices: [...new Set([...failing, ...passing])],
    }))
    .filter((draft) => checkProblems(draft).length === 0),
  fc
    .record({ ...facts, pinTable: fc.constantFrom(...connectors.map(({ key }) => key)) })
    .map((data) => ({ ...bare, ...data, kind: 'connector' as const })),
);
const checksOf = (least: number) => fc.array(check, { minLength: least, maxLength: 6 });
const sheets = fc.array(checksOf(0), { maxLength: 5 }).map((all) =>
  all.map((checks, i): KnownSheet => {
    return {
      repairId: `r${i}`,
      modelAddress: `model-${i % 2}`,
      repairAddress: `repair-${i}`,
      version: 1,
      checks,
    };
  }),
);
const read = (known: readonly KnownSheet[], tables = connectors) =>
  readCsv(writeCsv(checkRows(known, tables), CHECK_LAYOUT), CHECK_LAYOUT);

test('whatever sheets the forms can keep go out and come back without a change or a fault', () => {
  fc.assert(
    fc.property(sheets, (known) => {
      const { rows, problems } = read(known);
      expect(problems).toEqual([]);
      const unchanged = known.filter(({ checks }) => checks.length > 0).length;
      expect(planChecks({ rows, known, connectors })).toEqual({ sheets: [], unchanged, problems: [] });
    }),
    { numRuns: 300 },
  );
});

test('and make the same sheets of repairs that have another, but for what claims taught there', () => {
  fc.assert(
    fc.property(sheets, checksOf(0), (known, others) => {
      const { rows } = read(known.map((each) => ({ ...each, checks: each.checks.map(untaught) })));
      const before = known.map((each) => ({ ...each, checks: others }));
      const plan = planChecks({ rows, known: before, connectors });
      expect(plan.problems).toEqual([]);
      const wanted = known
        .filter(({ checks }) => checks.length > 0)
        .map(({ repairId, checks }) => ({ repairId, checks: checks.map(untaught) }));
      const changed = new Map(plan.sheets.map(({ repairId, checks }) => [repairId, checks]));
      for (const { repairId, checks } of wanted) {
        // A change is shown exactly where a version is written.
        expect(changed.has(repairId)).toBe(!isSameSheet(others.map(plainCheck), checks));
        expect(changed.get(repairId) ?? others.map(plainCheck)).toEqual(checks);
      }
    }),
    { numRuns: 300 },
  );
});

const untaught = (draft: CheckDraft): CheckDraft => ({ ...draft, lesson: null });

test('every ready-made check goes out and comes back', () => {
  const checks = [
    ...PIN_TABLES.flatMap((table) => connectorChecks(table)),
    ...mainsChecks(1),
    ...mainsChecks(2),
    ...SOLDER_FILLS.flatMap(({ key }) => solderFillCheck(key) ?? []),
  ];
  const shipped = PIN_TABLES.map(({ key, name }) => ({ key, name, isOffered: true }));
  const known = checks.map((draft, i): KnownSheet => {
    return { repairId: `${i}`, modelAddress: 'm', repairAddress: `r-${i}`, version: 1, checks: [draft] };
  });
  const plan = planChecks({ rows: read(known, shipped).rows, known, connectors: shipped });
  expect(plan).toEqual({ sheets: [], unchanged: checks.length, problems: [] });
});

test('a limit is read back as the number it was, however small or large', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(readReading(numberCell(value))).toBe(value === 0 ? 0 : value);
      expect(numberCell(value)).toMatch(/^-?\d+(\.\d+)?$/);
    }),
  );
  expect(numberCell(1e-7)).toBe('0.0000001');
  expect(numberCell(-1.25e21)).toBe('-1250000000000000000000');
});

test('checks are found again once each, and none both stays and goes', () => {
  const labels = fc.array(
    fc.constantFrom(...'abcd').map((label) => ({ label })),
    { maxLength: 6 },
  );
  fc.assert(
    fc.property(labels, labels, (now, then) => {
      const { from, off, moved } = alignChecks(now, then);
      const stayed = from.flatMap((at) => at ?? []);
      expect([...stayed, ...off].sort()).toEqual(now.map((_, i) => i));
      expect(from).toHaveLength(then.length);
      expect(moved.size > 0).toBe(stayed.some((at, i) => i > 0 && at < (stayed[i - 1] ?? 0)));
    }),
  );
});

const term = fc.oneof(
  fc.constantFrom('P1Y6M', 'P100Y', 'P012M', 'P1W', 'P1D'),
  fc
    .tuple(fc.integer({ min: 1, max: 1000 }), fc.constantFrom('D', 'W', 'M'))
    .map(([n, unit]) => `P${n}${unit}`),
);
const policies = fc
  .uniqueArray(
    fc.record({
      name: line(1),
      workTerm: fc.option(term),
      partsTerm: term,
      startEvent: fc.constantFrom(...START_EVENTS),
      exclusions: entries(0, 20),
      renewedMinimum: fc.option(term),
      heldRule: fc.constantFrom(...HELD_RULES),
      rollLastDay: fc.boolean(),
      graceDays: fc.nat(60),
      transferable: fc.boolean(),
      isOffered: fc.boolean(),
    }),
    { selector: ({ name }) => name, maxLength: 5 },
  )
  .map((all) =>
    all.map(({ name, isOffered, ...terms }, i): KnownPolicy => {
      return { id: `p${i}`, version: 1, data: { name, terms, isOffered } };
    }),
  );

test('whatever policies the forms can keep go out and come back, and are made where there are none', () => {
  fc.assert(
    fc.property(policies, (known) => {
      const text = writeCsv(
        known.map(({ data }) => policyCells(data)),
        POLICY_LAYOUT,
      );
      const { rows, problems } = readCsv(text, POLICY_LAYOUT);
      expect(problems).toEqual([]);
      expect(planPolicies({ rows, known })).toEqual({ policies: [], unchanged: known.length, problems: [] });
      const made = planPolicies({ rows, known: [] });
      expect(made.problems).toEqual([]);
      expect(made.policies.map(({ id, data }) => ({ id, data }))).toEqual(
        known.map(({ data }) => ({ id: null, data })),
      );
    }),
    { numRuns: 300 },
  );
});
