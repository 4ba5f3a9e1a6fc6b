import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { type PolicyTerms, type TermsProblem, termsProblems } from '@/lib/warranty/rules/terms';
import { readTerms } from '@/lib/warranty/stored-terms';
import { isSameTerms } from './rules/same';
import { TERM_SENTENCE } from './rules/term-parts';
import { POLICY_FIELDS } from './shown-fields';

export type PolicyWrite = {
  /** null for a new policy. */
  shown: Shown | null;
  name: string;
  terms: PolicyTerms;
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
 * Terms that did not change write no version; a new name alone is kept without one. Refuses a form older than the policy's name or
 * newest version. Returns the policy and its newest version.
 */
export async function savePolicyVersion(write: PolicyWrite): Promise<{ policyId: string; version: number }> {
  const [problem] = termsProblems(write.terms);
  if (problem) throw new Refusal('invalid', FIELDS[problem].sentence, FIELDS[problem].field);
  try {
    return await transaction((tx) =>
      write.shown === null ? create(tx, write) : change(tx, write, write.shown),
    );
  } catch (error) {
    if (isUniqueViolation(error, 'policy_name_key')) {
      throw new Refusal('conflict', 'There is a policy of this name already.', 'name');
    }
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

async function change(tx: Tx, { name, terms, now }: PolicyWrite, shown: Shown) {
  const { id: policyId } = shown;
  await tx.$queryRaw`SELECT 1 FROM "policy" WHERE "id" = ${policyId} FOR UPDATE`;
  const row = await tx.policyVersion.findFirst({
    where: { policyId },
    orderBy: { version: 'desc' },
    include: { policy: { select: { name: true } } },
  });
  const newest = requireAsShown(shown, POLICY_FIELDS, row && { ...row, name: row.policy.name }, 'policy');
  await tx.policy.update({ where: { id: policyId }, data: { name } });
  if (isSameTerms(readTerms(newest), terms)) return { policyId, version: newest.version };
  const version = newest.version + 1;
  await tx.policyVersion.create({ data: { ...terms, policyId, version, createdAt: now } });
  return { policyId, version };
}
