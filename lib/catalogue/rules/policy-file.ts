import {
  HELD_RULES,
  MOST_GRACE_DAYS,
  type PolicyTerms,
  START_EVENTS,
  type TermsProblem,
  termsProblems,
} from '@/lib/warranty/rules/terms';
import { type CellTell, cellReader } from './cell-reader';
import type { Layout } from './file-layout';
import { joinEntries } from './list-cells';
import { TERM_UNITS, termParts } from './term-parts';

/*
 * Warranty policies as one table: one row for each, found by its name.
 */

export const POLICY_LAYOUT = [
  { key: 'policy', head: 'Policy', kind: 'text' },
  { key: 'workTerm', head: 'Term on the work', kind: 'text' },
  { key: 'partsTerm', head: 'Term on fitted parts', kind: 'text' },
  { key: 'startEvent', head: 'Counted from', kind: 'text' },
  { key: 'renewedMinimum', head: 'Least term after a claim', kind: 'text' },
  { key: 'heldRule', head: 'Days here on a claim', kind: 'text' },
  { key: 'rollLastDay', head: 'Last day moves to a working day', kind: 'text' },
  { key: 'graceDays', head: 'Days of grace', kind: 'text' },
  { key: 'transferable', head: 'Follows the unit', kind: 'text' },
  { key: 'exclusions', head: 'Not covered', kind: 'list' },
  { key: 'offered', head: 'Offered to repairs', kind: 'text' },
] as const satisfies Layout<string>;

export type PolicyColumn = (typeof POLICY_LAYOUT)[number]['key'];
export type PolicyCells = Record<PolicyColumn, string>;
export const POLICY_COLUMNS = POLICY_LAYOUT.map(({ key }) => key);

/** What the file says of a policy; one that is retired is not offered to repairs. */
export type PolicyData = { name: string; terms: PolicyTerms; isOffered: boolean };

/** A policy with its newest version. */
export type KnownPolicy = { id: string; version: number; data: PolicyData };

const yesNo = (is: boolean) => (is ? 'yes' : 'no');

/** The cells of a policy, by column. */
export function policyCells({ name, terms, isOffered }: PolicyData): PolicyCells {
  return {
    policy: name,
    workTerm: termCell(terms.workTerm),
    partsTerm: termCell(terms.partsTerm),
    startEvent: terms.startEvent,
    renewedMinimum: termCell(terms.renewedMinimum),
    heldRule: terms.heldRule,
    rollLastDay: yesNo(terms.rollLastDay),
    graceDays: String(terms.graceDays),
    transferable: yesNo(terms.transferable),
    exclusions: joinEntries(terms.exclusions),
    offered: yesNo(isOffered),
  };
}

/** A term in words where they are read back as this very term, else as it is kept: 'P12M' is '12 months', 'P1Y6M' stays. */
export function termCell(term: string | null): string {
  if (term === null) return '';
  const { count, unit } = termParts(term);
  const one = TERM_UNITS[unit].slice(0, -1);
  const words = `${count} ${count === '1' ? one : TERM_UNITS[unit]}`;
  return readTermCell(words) === term ? words : term;
}

const WORDS = /^(\d{1,5})\s*(day|week|month|year)s?$/i;

/** The term of a cell: '12 months', '1 year' or an ISO 8601 duration; null for an empty one. Whether it can be promised is asked elsewhere. */
export function readTermCell(cell: string): string | null {
  if (cell === '') return null;
  const [, count, unit = ''] = WORDS.exec(cell) ?? [];
  return count === undefined ? cell.toUpperCase() : `P${Number(count)}${unit.slice(0, 1).toUpperCase()}`;
}

const TERM_FAULT = 'Write a term like 12 months, 90 days or 1 year, or nothing; 100 years at most';
const FAULTS: Record<TermsProblem, { column: PolicyColumn; message: string }> = {
  'work-term': { column: 'workTerm', message: TERM_FAULT },
  'parts-term': { column: 'partsTerm', message: TERM_FAULT },
  'renewed-minimum': { column: 'renewedMinimum', message: TERM_FAULT },
  'nothing-covered': { column: 'workTerm', message: 'Cover the work, the parts, or both' },
  'grace-days': { column: 'graceDays', message: `Enter a whole number from 0 to ${MOST_GRACE_DAYS}` },
};

/** The policy that a row says; null, and every fault told, where a cell cannot be read or the terms cannot be promised. */
export function readPolicyRow(cells: PolicyCells, tell: CellTell<PolicyColumn>): PolicyData | null {
  const told = new Set<PolicyColumn>();
  const read = cellReader<PolicyColumn>(cells, (column, message) => {
    told.add(column);
    tell(column, message);
  });
  const startEvent = read.oneOf('startEvent', START_EVENTS);
  const heldRule = read.oneOf('heldRule', HELD_RULES);
  const data: PolicyData = {
    name: read.line('policy', 'Enter the name of the policy'),
    terms: {
      startEvent: startEvent ?? 'delivered',
      workTerm: readTermCell(cells.workTerm),
      partsTerm: readTermCell(cells.partsTerm),
      renewedMinimum: readTermCell(cells.renewedMinimum),
      heldRule: heldRule ?? 'whole-days',
      rollLastDay: read.yesNo('rollLastDay'),
      graceDays: read.whole('graceDays', 0, MOST_GRACE_DAYS),
      transferable: read.yesNo('transferable'),
      exclusions: read.entries('exclusions'),
    },
    isOffered: read.yesNo('offered'),
  };
  for (const { column, message } of termsProblems(data.terms).map((problem) => FAULTS[problem]))
    if (!told.has(column)) read.wrong(column, message);
  return read.isSound() ? data : null;
}
