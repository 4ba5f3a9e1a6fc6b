import { describe, expect, test } from 'vitest';
import { planPolicies } from '@/lib/catalogue/rules/plan-policies';
import {
  type KnownPolicy,
  type PolicyCells,
  type PolicyColumn,
  policyCells,
  readTermCell,
  termCell,
} from '@/lib/catalogue/rules/policy-file';

const known: KnownPolicy[] = [
  {
    id: 'p1',
    version: 2,
    data: {
      name: 'Connector work',
      terms: {
        startEvent: 'delivered',
        workTerm: 'P12M',
        partsTerm: 'P1Y6M',
        exclusions: ['Wear; scratches', 'Liquid'],
        renewedMinimum: 'P90D',
        heldRule: 'whole-days',
        rollLastDay: true,
        graceDays: 7,
        transferable: false,
      },
      isOffered: true,
    },
  },
  {
    id: 'p2',
    version: 1,
    data: {
      name: 'Liquid damage',
      terms: {
        startEvent: 'collected',
        workTerm: null,
        partsTerm: 'P1Y',
        exclusions: [],
        renewedMinimum: null,
        heldRule: 'none',
        rollLastDay: false,
        graceDays: 0,
        transferable: true,
      },
      isOffered: false,
    },
  },
];

type Row = { row: number; cells: PolicyCells };
const own: Row[] = known.map(({ data }, i) => ({ row: i + 2, cells: policyCells(data) }));
const plan = (rows: Row[]) => planPolicies({ rows, known });
const edited = (at: number, cells: Partial<PolicyCells>) =>
  own.map((row, i) => (i === at ? { ...row, cells: { ...row.cells, ...cells } } : row));

test('the policies’ own rows change nothing', () => {
  expect(plan(own)).toEqual({ policies: [], unchanged: 2, problems: [] });
});

test('a changed term is the next version', () => {
  const found = plan(edited(0, { workTerm: '24 months' }));
  expect(found).toMatchObject({ unchanged: 1, problems: [] });
  expect(found.policies).toMatchObject([
    {
      row: 2,
      id: 'p1',
      version: 3,
      data: { name: 'Connector work', terms: { workTerm: 'P24M' } },
      fields: [{ column: 'workTerm', before: '12 months', after: '24 months' }],
    },
  ]);
});

test('a policy put back into the choice writes no version', () => {
  expect(plan(edited(1, { offered: 'yes' })).policies).toMatchObject([
    { id: 'p2', version: null, data: { isOffered: true }, fields: [{ column: 'offered' }] },
  ]);
});

test('a name that is not there is a new policy, capitals alone are the same one', () => {
  expect(plan(edited(0, { policy: 'Socket work' })).policies).toMatchObject([
    { id: null, version: 1, data: { name: 'Socket work' }, fields: [] },
  ]);
  expect(plan(edited(0, { policy: 'CONNECTOR work' }))).toEqual({
    policies: [],
    unchanged: 2,
    problems: [],
  });
});

describe('faults', () => {
  test.each<[Partial<PolicyCells>, PolicyColumn]>([
    [{ policy: '' }, 'policy'],
    [{ policy: 'x'.repeat(121) }, 'policy'],
    [{ workTerm: 'a year' }, 'workTerm'],
    [{ workTerm: '101 years' }, 'workTerm'],
    [{ partsTerm: 'PT5H' }, 'partsTerm'],
    [{ workTerm: '', partsTerm: '' }, 'workTerm'],
    [{ startEvent: 'posted' }, 'startEvent'],
    [{ renewedMinimum: '90' }, 'renewedMinimum'],
    [{ heldRule: 'some' }, 'heldRule'],
    [{ rollLastDay: 'perhaps' }, 'rollLastDay'],
    [{ graceDays: '61' }, 'graceDays'],
    [{ graceDays: '' }, 'graceDays'],
    [{ transferable: '' }, 'transferable'],
    [{ exclusions: Array.from({ length: 21 }, (_, i) => `Part ${i}`).join(';') }, 'exclusions'],
    [{ offered: '' }, 'offered'],
  ])('%o is told at its cell, once', (cells, column) => {
    const { problems } = plan(edited(0, cells));
    expect(problems).toMatchObject([{ row: 2, column }]);
  });

  test('the same policy in two rows, whatever its capitals', () => {
    expect(plan(edited(1, { policy: 'connector WORK' })).problems).toMatchObject([
      { row: 3, column: 'policy' },
    ]);
  });
});

test.each([
  ['P12M', '12 months'],
  ['P1Y', '1 year'],
  ['P1D', '1 day'],
  ['P6W', '6 weeks'],
  ['P1Y6M', 'P1Y6M'],
  ['P012M', 'P012M'],
  [null, ''],
])('%s stands as “%s” and is read back', (term, cell) => {
  expect(termCell(term)).toBe(cell);
  expect(readTermCell(cell)).toBe(term);
});

test.each([
  ['12 Months', 'P12M'],
  ['90days', 'P90D'],
  ['p1y6m', 'P1Y6M'],
])('“%s” is %s too', (cell, term) => {
  expect(readTermCell(cell)).toBe(term);
});
