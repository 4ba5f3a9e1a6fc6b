import { db } from '@/lib/db/client';
import type { Tx } from '@/lib/db/transaction';
import { readSerialRule } from '@/lib/numbers/serial-rule';
import { readWorkshop } from '@/lib/workshop/records';
import { writeCsv } from './csv';
import { type ListSettings, listLayout } from './rules/list-columns';
import { type KnownCatalogue, listRows } from './rules/list-data';
import type { Referred } from './rules/list-values';
import { storedBattery, storedTax } from './stored';

/** Everything that the list says of the catalogue, in the order of the price list. */
export async function readKnownCatalogue(client: Tx = db): Promise<KnownCatalogue> {
  const families = await client.family.findMany({ orderBy: [{ position: 'asc' }, { name: 'asc' }] });
  const models = await client.model.findMany({
    orderBy: [{ maker: 'asc' }, { name: 'asc' }, { slug: 'asc' }],
    include: { family: { select: { slug: true } } },
  });
  const repairs = await client.repair.findMany({
    orderBy: [{ name: 'asc' }, { slug: 'asc' }, { model: { slug: 'asc' } }],
    include: {
      model: { select: { slug: true } },
      policy: { select: { name: true } },
      usualParts: {
        orderBy: { part: { code: 'asc' } },
        select: { quantity: true, part: { select: { code: true } } },
      },
    },
  });
  return {
    families: families.map(({ id, slug, ...data }) => ({ id, slug, data })),
    models: models.map(({ id, slug, family, familyId: _, ...data }) => ({
      id,
      slug,
      familySlug: family.slug,
      data: {
        ...data,
        battery: storedBattery.parse(data.battery),
        serialRule: readSerialRule(data.serialRule),
      },
    })),
    repairs: repairs.map(({ id, slug, model, modelId: _, policyId: __, policy, usualParts, ...data }) => ({
      id,
      slug,
      modelSlug: model.slug,
      data: {
        ...data,
        taxCategory: storedTax.parse(data.taxCategory),
        policy: policy.name,
        // By code as the rules order them; the order of the database may differ with its language.
        parts: usualParts
          .map(({ quantity, part }) => ({ code: part.code, quantity }))
          .sort((a, b) => (a.code < b.code ? -1 : 1)),
      },
    })),
  };
}

/** Policies that have terms, and parts: what the rows of a list may name. */
export async function readReferred(client: Tx = db): Promise<Referred> {
  const policies = await client.policy.findMany({
    where: { versions: { some: {} } },
    select: { name: true },
  });
  const parts = await client.part.findMany({ select: { code: true } });
  return { policies: policies.map((each) => each.name), parts: parts.map((each) => each.code) };
}

/** How the workshop keeps its prices, as the list must know it. */
export async function listSettings(client: Tx = db): Promise<ListSettings> {
  const { currency, pricesIncludeTax } = await readWorkshop(client);
  return { currency, pricesIncludeTax };
}

/** The whole catalogue as the text of a CSV file. */
export async function exportCatalogue(client: Tx = db): Promise<string> {
  const settings = await listSettings(client);
  return writeCsv(listRows(await readKnownCatalogue(client), settings), listLayout(settings));
}
