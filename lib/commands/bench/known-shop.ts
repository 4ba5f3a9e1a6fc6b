import type { ClientBase } from 'pg';
import { totals } from '@/lib/money/tax';
import { taxCategory } from '@/lib/quotes/stored-lines';
import type { PolicyTerms } from '@/lib/warranty/rules/terms';
import { readTerms } from '@/lib/warranty/stored-terms';

export type KnownPart = { id: string; name: string; suppliers: readonly string[]; unitCostMinor: number };

/** A repair of the price list with all that a job of it takes over. Money in minor units. */
export type KnownRepair = {
  id: string;
  name: string;
  modelId: string;
  modelName: string;
  serialStem: string;
  sheetId: string;
  policyVersionId: string;
  terms: PolicyTerms;
  isCovered: boolean;
  minutes: number;
  symptoms: readonly string[];
  priceMinor: number;
  taxCategory: string;
  taxRateBps: number;
  netMinor: number;
  taxMinor: number;
  grossMinor: number;
  part: KnownPart | null;
};

export type KnownShop = { repairs: KnownRepair[]; currency: string; isGross: boolean };

type Row = {
  id: string;
  name: string;
  modelId: string;
  modelName: string;
  minutes: number;
  symptoms: string[];
  priceMinor: number;
  taxCategory: string;
  taxRateBps: number;
  sheetId: string;
  policy: Record<string, unknown> & { id: string };
  part: { id: string; name: string; suppliers: string[] | null; cost: number | null } | null;
};

/** The price list of the workshop that the jobs are to be of; refuses a database without one. */
export async function readShop(client: ClientBase): Promise<KnownShop> {
  const { rows: workshops } = await client.query<{ currency: string; isGross: boolean }>(
    `SELECT "currency", "pricesIncludeTax" AS "isGross" FROM "workshop"`,
  );
  const { rows } = await client.query<Row>(`
    SELECT r."id", r."name", r."modelId", m."maker" || ' ' || m."name" AS "modelName", r."minutes", r."symptoms",
      r."priceMinor", r."taxCategory", r."taxRateBps", s."id" AS "sheetId", to_jsonb(v) AS "policy", p.part
    FROM "repair" r
    JOIN "model" m ON m."id" = r."modelId"
    CROSS JOIN LATERAL (SELECT "id" FROM "check_sheet" WHERE "repairId" = r."id" ORDER BY "version" DESC LIMIT 1) s
    CROSS JOIN LATERAL (SELECT * FROM "policy_version" WHERE "policyId" = r."policyId" ORDER BY "version" DESC LIMIT 1) v
    LEFT JOIN LATERAL (
      SELECT jsonb_build_object('id', t."id", 'name', t."name",
        'suppliers', (SELECT jsonb_agg(DISTINCT l."supplier") FROM "lot" l WHERE l."partId" = t."id"),
        'cost', (SELECT avg(l."unitCostMinor")::int FROM "lot" l WHERE l."partId" = t."id")) AS part
      FROM "repair_part" u JOIN "part" t ON t."id" = u."partId" WHERE u."repairId" = r."id" ORDER BY t."code" LIMIT 1
    ) p ON TRUE
    WHERE r."isListed" ORDER BY r."id"`);
  const [workshop] = workshops;
  if (!workshop || rows.length === 0)
    throw new Error('There is no workshop with a price list in this database.');
  return { ...workshop, repairs: rows.map((row) => known(row, workshop.isGross)) };
}

function known({ policy, part, ...row }: Row, isGross: boolean): KnownRepair {
  const terms = readTerms(policy);
  const line = {
    amount: row.priceMinor,
    category: taxCategory.parse(row.taxCategory),
    rateBps: row.taxRateBps,
  };
  const { net, tax, gross } = totals([line], isGross ? 'gross' : 'net');
  const letters = row.modelName.toUpperCase().replace(/[^A-Z]/g, '');
  return {
    ...row,
    serialStem: `${letters.slice(0, 2)}${letters.slice(-1)}`,
    policyVersionId: policy.id,
    terms,
    isCovered: terms.workTerm !== null,
    netMinor: net,
    taxMinor: tax,
    grossMinor: gross,
    part: part && {
      id: part.id,
      name: part.name,
      suppliers: part.suppliers ?? ['Harbour Components'],
      unitCostMinor: part.cost ?? 100,
    },
  };
}
