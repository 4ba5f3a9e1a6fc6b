import type { ClientBase } from 'pg';

const EACH = 10;

/** Adds made-up models, ten repairs each, until so many repairs are on the price list; no job is of them. */
export async function listRepairs(client: ClientBase, o: { repairs: number; now: Date }): Promise<void> {
  const { rows } = await client.query<{ listed: number }>(
    `SELECT count(*)::int AS "listed" FROM "repair" WHERE "isListed"`,
  );
  const models = Math.ceil((o.repairs - (rows[0]?.listed ?? 0)) / EACH);
  if (models <= 0) return;
  await client.query(
    `INSERT INTO "model" ("id", "familyId", "slug", "maker", "name", "aliases", "accessories", "serialExample")
      SELECT 'listed-' || n, (SELECT "id" FROM "family" ORDER BY "position" OFFSET n % (SELECT count(*) FROM "family") LIMIT 1),
        'ostrel-mx-' || n, 'Ostrel', 'MX-' || n, ARRAY['Mixer ' || n], ARRAY['USB cable'], 'MX' || n || '-00042'
      FROM generate_series(1, $1::int) n`,
    [models],
  );
  await client.query(
    `INSERT INTO "repair" ("id", "modelId", "slug", "name", "summary", "priceMinor", "taxRateBps", "minutes", "workingDays",
        "symptoms", "policyId")
      SELECT 'listed-' || n || '-' || k, 'listed-' || n, 'fader-' || k, 'Fader ' || k || ' replaced',
        'Old fader out, track cleaned, new fader soldered and set to even strength.', 4000 + 100 * k, 2000, 40, 5,
        ARRAY['Crackles when moved'], (SELECT "id" FROM "policy" ORDER BY "name" LIMIT 1)
      FROM generate_series(1, $1::int) n, generate_series(1, ${EACH}) k`,
    [models],
  );
  await client.query(
    `INSERT INTO "repair_price" ("id", "repairId", "priceMinor", "isGross", "taxCategory", "taxRateBps", "since")
      SELECT "id", "id", "priceMinor", true, "taxCategory", "taxRateBps", $1 FROM "repair" WHERE "id" LIKE 'listed-%'`,
    [o.now],
  );
  await client.query('ANALYZE "model", "repair", "repair_price"');
}
