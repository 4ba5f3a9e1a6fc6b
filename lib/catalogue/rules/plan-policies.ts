import { storedName } from './cell-reader';
import { byPlaceIn, type CellChange, cellChanges, type FileProblem, type FileRow } from './file-layout';
import {
  type KnownPolicy,
  POLICY_COLUMNS,
  type PolicyColumn,
  type PolicyData,
  policyCells,
  readPolicyRow,
} from './policy-file';

/** A policy to add (no id) or to change. */
export type PolicyChange = {
  row: number;
  id: string | null;
  data: PolicyData;
  /** The version its terms get; null where they stay as they are. */
  version: number | null;
  /** What differs from the policy; empty for a new one. */
  fields: CellChange<PolicyColumn>[];
};

export type PoliciesPlan = {
  policies: PolicyChange[];
  /** How many the file names and leaves as they are. */
  unchanged: number;
  problems: FileProblem<PolicyColumn>[];
};

/**
 * Compares the rows of a policy file with the policies: which are added, which get a next version, and everything that is wrong. A row
 * finds its policy by the name, capitals or not; a name that is not there is a new policy. What has no row stays as it is.
 * Nothing may be written while there is a problem; the changes then are those of the rows that could be read.
 * Example: the policies' own rows give no change and no problem.
 */
export function planPolicies(o: {
  rows: readonly FileRow<PolicyColumn>[];
  known: readonly KnownPolicy[];
}): PoliciesPlan {
  const problems: FileProblem<PolicyColumn>[] = [];
  const byName = new Map(o.known.map((policy) => [policy.data.name, policy]));
  const names = [...byName.keys()];
  const rowOf = new Map<string, number>();
  const compared = o.rows.flatMap(({ row, cells }): PolicyChange[] => {
    const read = readPolicyRow(cells, (column, message) => void problems.push({ row, column, message }));
    const name = storedName(cells.policy, names) ?? cells.policy;
    const earlier = rowOf.get(name);
    if (earlier === undefined) rowOf.set(name, row);
    else if (name !== '')
      problems.push({ row, column: 'policy', message: `Row ${earlier} is this policy too` });
    return read ? [changeOf(row, byName.get(name), { ...read, name })] : [];
  });
  const policies = compared.filter(({ id, fields }) => id === null || fields.length > 0);
  return {
    policies,
    unchanged: compared.length - policies.length,
    problems: problems.sort(byPlaceIn(POLICY_COLUMNS)),
  };
}

function changeOf(row: number, known: KnownPolicy | undefined, data: PolicyData): PolicyChange {
  if (!known) return { row, id: null, data, version: 1, fields: [] };
  const fields = cellChanges(POLICY_COLUMNS, policyCells(known.data), policyCells(data));
  const isSameTerms = fields.every(({ column }) => column === 'offered');
  return { row, id: known.id, data, version: isSameTerms ? null : known.version + 1, fields };
}
