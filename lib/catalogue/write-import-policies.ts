import { randomUUID } from 'node:crypto';
import type { Tx } from '@/lib/db/transaction';
import type { PolicyChange } from './rules/plan-policies';

/**
 * Writes what a plan without problems says, inside the caller's transaction: new policies, the next versions of those whose terms
 * changed, and which of them are offered to repairs.
 */
export async function writeImportPolicies(
  tx: Tx,
  changes: readonly PolicyChange[],
  now: Date,
): Promise<void> {
  const kept = changes.map((change) => ({ ...change, policyId: change.id ?? randomUUID() }));
  await tx.policy.createMany({
    data: kept
      .filter(({ id }) => id === null)
      .map(({ policyId, data }) => ({
        id: policyId,
        name: data.name,
        retiredAt: data.isOffered ? null : now,
      })),
  });
  await tx.policyVersion.createMany({
    data: kept.flatMap(({ policyId, version, data }) =>
      version === null ? [] : [{ ...data.terms, policyId, version, createdAt: now }],
    ),
  });
  const turned = kept.filter(({ fields }) => fields.some(({ column }) => column === 'offered'));
  for (const isOffered of [true, false]) {
    const ids = turned.filter(({ data }) => data.isOffered === isOffered).map(({ policyId }) => policyId);
    if (ids.length > 0)
      await tx.policy.updateMany({
        where: { id: { in: ids } },
        data: { retiredAt: isOffered ? null : now },
      });
  }
}
