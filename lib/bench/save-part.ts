import { TERM_SENTENCE } from '@/lib/catalogue/rules/term-parts';
import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { isTerm } from '@/lib/warranty/rules/terms';
import { PART_FIELDS } from './part-records';

export type PartInput = {
  code: string;
  name: string;
  /** The supplier's own warranty, ISO 8601, or null. */
  term: string | null;
  /** null: ordered no more */
  reorderAt: number | null;
};

/**
 * Adds a part, or changes the one that was shown. Returns its id. Refuses a form older than the part, a code in use and a term
 * that is no period or longer than 100 years.
 */
export async function savePart(shown: Shown | null, input: PartInput): Promise<string> {
  if (input.term !== null && !isTerm(input.term)) {
    throw new Refusal('invalid', TERM_SENTENCE, 'term');
  }
  try {
    return await transaction(async (tx) => {
      if (shown === null) return (await tx.part.create({ data: input, select: { id: true } })).id;
      const { id } = shown;
      // Locked before it is compared: of two who have the part open the second finds what the first left.
      await tx.$queryRaw`SELECT 1 FROM "part" WHERE "id" = ${id} FOR UPDATE`;
      const before = await tx.part.findUnique({ where: { id }, select: PART_FIELDS });
      requireAsShown(shown, PART_FIELDS, before, 'part');
      await tx.part.update({ where: { id }, data: input });
      return id;
    });
  } catch (error) {
    if (isUniqueViolation(error, 'part_code_key')) {
      throw new Refusal('conflict', 'Another part has this code.', 'code');
    }
    throw error;
  }
}
