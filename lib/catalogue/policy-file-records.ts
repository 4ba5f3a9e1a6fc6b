import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { readTerms } from '@/lib/warranty/stored-terms';
import { writeCsv } from './csv';
import { type KnownPolicy, POLICY_LAYOUT, policyCells } from './rules/policy-file';

/** Every policy with its newest terms, retired ones too. */
export async function readKnownPolicies(client: Tx = db): Promise<KnownPolicy[]> {
  const rows = await client.policy.findMany({
    orderBy: { name: 'asc' },
    include: { versions: { orderBy: { version: 'desc' }, take: 1 } },
  });
  return rows.flatMap(({ id, name, retiredAt, versions: [newest] }) =>
    newest
      ? [
          {
            id,
            version: newest.version,
            data: { name, terms: readTerms(newest), isOffered: retiredAt === null },
          },
        ]
      : [],
  );
}

/** Every policy as the text of a CSV file. */
export async function exportPolicies(client: Tx = db): Promise<string> {
  const rows = (await readKnownPolicies(client)).map(({ data }) => policyCells(data));
  return writeCsv(rows, POLICY_LAYOUT);
}
