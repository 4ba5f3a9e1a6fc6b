import { isUniqueViolation } from '@/lib/db/errors';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { freeSlug, slugOf } from './rules/slug';

export type FamilyInput = { name: string; position: number };

/** Adds a family, or changes the one of an id; its address is made once, from its first name, and stays. Returns its id. */
export async function saveFamily(id: string | null, input: FamilyInput): Promise<string> {
  try {
    return await transaction(async (tx) => {
      if (id !== null) {
        const { count } = await tx.family.updateMany({ where: { id }, data: input });
        if (count === 0) throw new Refusal('not-found', 'This family is no longer in the catalogue.');
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
