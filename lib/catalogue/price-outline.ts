import { Prisma } from '@/lib/db/generated/client';
import type { Tx } from '@/lib/db/transaction';
import { rankEntries } from './rules/search';

/** What the price list holds and in which order: enough to count, to choose a kind of device and to cut a page. */
export type OutlineFamily = { id: string; slug: string; name: string; models: OutlineModel[] };
export type OutlineModel = { id: string; repairIds: string[] };

type Line = Omit<OutlineFamily, 'models'> & { modelId: string; repairId: string };

/**
 * The whole list in its order, or with a search what fits it, the best first. Families and models without a listed repair are
 * left out. A search reads the words of every repair and looks through them here, which forgives typos that SQL does not.
 */
export async function readOutline(search: string, client: Tx): Promise<OutlineFamily[]> {
  if (search.trim() === '') {
    return inFamilies(await client.$queryRaw<Line[]>`SELECT ${LINE} ${LISTED_REPAIRS} ${IN_ORDER}`);
  }
  const lines = await client.$queryRaw<
    (Line & Words)[]
  >`SELECT ${LINE}, ${WORDS} ${LISTED_REPAIRS} ${IN_ORDER}`;
  return inFamilies(bestFirst(lines, search));
}

/** Every repair on the price list as `r`, with its model and family as `m` and `f`: it and its model are listed. */
export const LISTED_REPAIRS = Prisma.sql`
  FROM "family" f
  JOIN "model" m ON m."familyId" = f."id" AND m."isListed"
  JOIN "repair" r ON r."modelId" = m."id" AND r."isListed"`;

const IN_ORDER = Prisma.sql`
  ORDER BY f."position", f."name", f."id", m."maker", m."name", m."id", r."name", r."id"`;

const LINE = Prisma.sql`f."id", f."slug", f."name", m."id" AS "modelId", r."id" AS "repairId"`;

type Words = { model: string; aliases: string[]; repair: string; symptoms: string[]; summary: string };

const WORDS = Prisma.sql`m."maker" || ' ' || m."name" AS model, m."aliases", r."name" AS repair, r."symptoms", r."summary"`;

function bestFirst(lines: readonly (Line & Words)[], search: string): Line[] {
  const entries = lines.map((line) => ({
    id: line.repairId,
    fields: [
      { text: line.model, weight: 4 },
      { text: line.aliases.join(' '), weight: 4 },
      { text: line.repair, weight: 3 },
      { text: line.name, weight: 2 },
      { text: line.symptoms.join(' '), weight: 2 },
      { text: line.summary, weight: 1 },
    ],
  }));
  const lineOf = new Map(lines.map((line) => [line.repairId, line]));
  return rankEntries(search, entries).flatMap(({ id }) => lineOf.get(id) ?? []);
}

/** A family stands where its first line stands, and a model among its family's likewise. */
function inFamilies(lines: readonly Line[]): OutlineFamily[] {
  const families = new Map<string, OutlineFamily>();
  const models = new Map<string, OutlineModel>();
  for (const { id, slug, name, modelId, repairId } of lines) {
    const family = families.get(id) ?? { id, slug, name, models: [] };
    families.set(id, family);
    const model = models.get(modelId) ?? { id: modelId, repairIds: [] };
    if (!models.has(modelId)) family.models.push(model);
    models.set(modelId, model);
    model.repairIds.push(repairId);
  }
  return [...families.values()];
}
