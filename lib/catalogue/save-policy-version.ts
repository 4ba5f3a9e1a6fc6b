import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { type PolicyTerms, type TermsProblem, termsProblems } from '@/lib/warranty/rules/terms';
import { readTerms } from '@/lib/warranty/stored-terms';
import { isSameTerms } from './rules/same';
import { TERM_SENTENCE } from './rules/term-parts';

export type PolicyWrite = {
  /** null for a new policy. */
  policyId: string | null;
  name: string;
  terms: PolicyTerms;
  /** Newest version when the form was opened; 0 for a new policy. */
  basedOn: number;
  now: Date;
};

const FIELDS: Record<TermsProblem, { field: string; sentence: string }> = {
  'work-term': { field: 'workTerm', sentence: TERM_SENTENCE },
  'parts-term': { field: 'partsTerm', sentence: TERM_SENTENCE },
  'nothing-covered': { field: 'workTerm', sentence: 'Cover the work, the parts, or both.' },
  'renewed-minimum': { field: 'renewedMinimum', sentence: TERM_SENTENCE },
  'grace-days': { field: 'graceDays', sentence: 'Give 0 to 60 whole days.' },
};

/**
 * Writes the next version of a policy, or a new policy with its first. Certificates keep the version they were issued under.
 * Terms that did not change write no version; a new name alone is kept without one. Returns the policy and its newest version.
 *
 * Two owners may change the same policy at once: the unique index lets one write version n + 1 and the other is told.
 */
export async function savePolicyVersion(write: PolicyWrite): Promise<{ policyId: string; version: number }> {
  const [problem] = termsProblems(write.terms);
  if (problem) throw new Refusal('invalid', FIELDS[problem].sentence, FIELDS[problem].field);
  try {
    return await transaction((tx) =>
      write.policyId === null ? create(tx, write) : change(tx, write, write.policyId),
    );
  } catch (error) {
    if (isUniqueViolation(error, 'policy_name_key')) {
      throw new Refusal('conflict', 'There is a policy of this name already.', 'name');
    }
    if (isUniqueViolation(error, 'policy_version_policyId_version_key')) throw policyMoved();
    throw error;
  }
}

async function create(tx: Tx, { name, terms, now }: PolicyWrite) {
  const policy = await tx.policy.create({
    data: { name, versions: { create: { ...terms, version: 1, createdAt: now } } },
    select: { id: true },
  });
  return { policyId: policy.id, version: 1 };
}

async function change(tx: Tx, { name, terms, basedOn, now }: PolicyWrite, policyId: string) {
  const newest = await tx.policyVersion.findFirst({ where: { policyId }, orderBy: { version: 'desc' } });
  if (!newest) throw new Refusal('not-found', 'This policy is no longer in the catalogue.');
  if (newest.version !== basedOn) throw policyMoved();
  await tx.policy.update({ where: { id: policyId }, data: { name } });
  if (isSameTerms(readTerms(newest), terms)) return { policyId, version: newest.version };
  const version = newest.version + 1;
  await tx.policyVersion.create({ data: { ...terms, policyId, version, createdAt: now } });
  return { policyId, version };
}

function policyMoved(): Refusal {
  return new Refusal(
    'conflict',
    'Somebody else changed this policy meanwhile. Look at it again before you save.',
  );
}
