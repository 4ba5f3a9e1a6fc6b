import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { requireAsShown, type Shown } from '@/lib/shown-row';
import { freeSlug, slugOf } from './rules/slug';
import { FAMILY_FIELDS } from './shown-fields';

export type FamilyInput = { name: string; position: number };

/**
 * Adds a family, or changes the one that was shown; its address is made once, from its first name, and stays. Returns its id.
 * Refuses a form older than the family.
 */
export async function saveFamily(shown: Shown | null, input: FamilyInput): Promise<string> {
  try {
    return await transaction(async (tx) => {
      if (shown !== null) {
        const { id } = shown;
        await tx.$queryRaw`SELECT 1 FROM "family" WHERE "id" = ${id} FOR UPDATE`;
        const before = await tx.family.findUnique({ where: { id }, select: FAMILY_FIELDS });
        requireAsShown(shown, FAMILY_FIELDS, before, 'family');
        await tx.family.update({ where: { id }, data: input });
        return id;
      }
      const taken = new Set((await tx.family.findMany({ select: { slug: true } })).map((row) => row.slug));
      const slug = freeSlug(slugOf(input.name), taken);
      return (await tx.family.create({ data: { ...input, slug }, select: { id: true } })).id;
    });
  } catch (error) {
    // Two people add a family of the same name at once: the address of the second is taken by then.
    if (isUniqueViolation(error))
      throw new Refusal('conflict', 'A family of this name was just added.', 'name');
    throw error;
  }
}
