/**
 * `npm run measure:serials`: how long it takes to find a misread serial among 100,000 certificates and as many jobs, on a
 * throwaway PostgreSQL server, with the plan; and how long trigrams (pg_trgm) would take for the same. All made up.
 */
import type { Prisma } from '@/lib/db/generated/client';
import { onServer } from '@/lib/db/server';
import { startThrowawayPostgres } from './throwaway-postgres';

const CERTIFICATES = 100_000;
const SEARCHES = 500;
const MODELS = 40;
const ALPHABET = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/** Numbers that look drawn and are the same on every run (Park and Miller 1988, minimal standard generator). */
let state = 20_261_125;
function below(n: number): number {
  state = (state * 48_271) % 2_147_483_647;
  return state % n;
}
const pick = (text: string) => text.charAt(below(text.length));

// Models share a beginning, and their numbers run on: most serials have near neighbours, as in life.
const prefixes = Array.from(
  { length: MODELS },
  () => pick('BDHLNQSTW') + pick('BDHLNQSTW') + pick('123456789'),
);
const keys = Array.from(
  { length: CERTIFICATES },
  () => `${prefixes[below(MODELS)]}${10_000 + below(5000)}${pick('ABCDEFGHJK')}`,
);

function misread(key: string): string {
  const i = below(key.length);
  const other = pick(ALPHABET);
  switch (below(4)) {
    case 0:
      return key.slice(0, i) + other + key.slice(i + 1);
    case 1:
      return key.slice(0, i) + key.slice(i + 1);
    case 2:
      return key.slice(0, i) + other + key.slice(i);
    default:
      return key.replaceAll('0', 'O').replaceAll('1', 'I').replaceAll('8', 'B');
  }
}

const server = await startThrowawayPostgres();
Object.assign(process.env, { DATABASE_URL: server.url });
try {
  const { migrate } = await import('@/lib/db/migrate');
  await migrate(server.url);
  await fill();
  await measure();
  await (await import('@/lib/db/client')).disconnect();
} finally {
  server.stop();
}

/** One customer, model, repair, sheet and policy; a job and its certificate for each serial. */
async function fill(): Promise<void> {
  await onServer(server.url, async (client) => {
    await client.query(`
      INSERT INTO "customer" ("id", "name", "email", "postcode", "town", "country", "createdAt")
        VALUES ('c', 'Maren Holt', 'maren.holt@example.org', 'QM2 7HB', 'Sandmouth', 'GB', now());
      INSERT INTO "family" ("id", "slug", "name") VALUES ('f', 'field-recorders', 'Field recorders');
      INSERT INTO "model" ("id", "familyId", "slug", "maker", "name") VALUES ('m', 'f', 'tideline', 'Tideline', 'HW-2');
      INSERT INTO "policy" ("id", "name") VALUES ('p', 'Connector work');
      INSERT INTO "policy_version" ("id", "policyId", "version", "startEvent", "heldRule", "createdAt")
        VALUES ('v', 'p', 1, 'handed-to-carrier', 'whole-days', now());
      INSERT INTO "repair" ("id", "modelId", "slug", "name", "summary", "priceMinor", "taxRateBps", "minutes", "workingDays", "policyId")
        VALUES ('r', 'm', 'usb', 'USB-C socket replaced', '', 7200, 2000, 60, 5, 'p');
      INSERT INTO "check_sheet" ("id", "repairId", "version", "createdAt") VALUES ('s', 'r', 1, now());`);
    for (let from = 0; from < keys.length; from += 10_000) {
      const part = [keys.slice(from, from + 10_000), from];
      await client.query(
        `INSERT INTO "job" ("id", "number", "kind", "stage", "customerId", "modelId", "repairId", "sheetId", "serialTyped",
            "serialKey", "problem", "batteryAnswer", "dataAnswer", "termsAcceptedAt", "bookedAt")
          SELECT 'j' || ($2 + n), 'J' || ($2 + n), 'repair', 'closed', 'c', 'm', 'r', 's', key, key, '', 'healthy', 'none', now(),
            now() - ($2 + n) * interval '10 minutes'
          FROM unnest($1::text[]) WITH ORDINALITY AS given (key, n)`,
        part,
      );
      await client.query(
        `INSERT INTO "certificate" ("id", "number", "revision", "jobId", "policyVersionId", "modelName", "serialTyped",
            "serialKey", "issuedAt", "issuedOn", "endsOn", "keyId", "signature", "fileKey", "sha256")
          SELECT 'w' || ($2 + n), 'W' || ($2 + n), 1, 'j' || ($2 + n), 'v', 'Tideline HW-2', key, key, now(), current_date,
            current_date, 'k1', repeat('s', 200), 'f' || ($2 + n), repeat('0', 64)
          FROM unnest($1::text[]) WITH ORDINALITY AS given (key, n)`,
        part,
      );
    }
    await client.query('VACUUM ANALYZE');
    const { rows } = await client.query<{ version: string }>(
      "SELECT current_setting('server_version') AS version",
    );
    console.log(`PostgreSQL ${rows[0]?.version}, ${keys.length} certificates and as many jobs`);
  });
}

type Search = { typed: string; meant: number };

async function measure(): Promise<void> {
  const { nearIds, nearSerials, proposing } = await import('@/lib/warranty/near-serials');
  const searches = await drawSearches();
  const whole = await timed(searches, ({ typed }) => nearSerials(typed, { timeZone: 'Europe/London' }));
  console.log(`jobs and certificates, with what is shown of them: ${whole}`);
  await report('key by key', searches, (typed) => nearIds('certificate', typed));
  const { Prisma } = await import('@/lib/db/generated/client');
  await explain(proposing('certificate', searches[0]?.typed ?? ''));

  const { db } = await import('@/lib/db/client');
  await db.$executeRaw`CREATE EXTENSION pg_trgm`;
  await db.$executeRaw`CREATE INDEX "trigrams" ON "certificate" USING gin ("serialKey" gin_trgm_ops)`;
  await db.$executeRaw`ANALYZE "certificate"`;
  const { oneEditKeys } = await import('@/lib/numbers/near-serial');
  const byTrigrams = (typed: string) =>
    Prisma.sql`SELECT "id" FROM "certificate" WHERE "serialKey" LIKE ANY (${oneEditKeys(typed, '_')}::text[])`;
  await report('by trigrams, without look-alikes', searches, async (typed) =>
    (await db.$queryRaw<{ id: string }[]>(byTrigrams(typed))).map(({ id }) => id),
  );
  await explain(byTrigrams(searches[0]?.typed ?? ''));
}

async function drawSearches(): Promise<Search[]> {
  const { compareSerials } = await import('@/lib/numbers/serial');
  const searches: Search[] = [];
  while (searches.length < SEARCHES) {
    const meant = below(keys.length);
    const typed = misread(keys[meant] ?? '');
    // A slip may leave the serial as it was: the character written over is the same.
    if (compareSerials(typed, keys[meant] ?? '') === 'likely-misread') searches.push({ typed, meant });
  }
  return searches;
}

async function report(
  name: string,
  searches: readonly Search[],
  search: (typed: string) => Promise<string[]>,
): Promise<void> {
  const answers = new Map<string, string[]>();
  const times = await timed(searches, async ({ typed }) => answers.set(typed, await search(typed)));
  const found = searches.filter(({ typed, meant }) => answers.get(typed)?.includes(`w${meant + 1}`));
  const rows = [...answers.values()].flat().length / answers.size;
  console.log(
    `${name}: ${times}; ${found.length} of the serials meant were found, among ${rows.toFixed(1)} rows each`,
  );
}

async function explain(statement: Prisma.Sql): Promise<void> {
  const { db } = await import('@/lib/db/client');
  const { Prisma } = await import('@/lib/db/generated/client');
  const plan = await db.$queryRaw<Record<'QUERY PLAN', string>[]>(
    Prisma.sql`EXPLAIN (ANALYZE, BUFFERS) ${statement}`,
  );
  console.log(plan.map((line) => `    ${line['QUERY PLAN'].slice(0, 110)}`).join('\n'));
}

async function timed<T>(given: readonly T[], work: (each: T) => Promise<unknown>): Promise<string> {
  for (const each of given.slice(0, 20)) await work(each);
  const times: number[] = [];
  for (const each of given) {
    const began = performance.now();
    await work(each);
    times.push(performance.now() - began);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? 0).toFixed(1);
  return `p50 ${at(0.5)} ms, p95 ${at(0.95)} ms, slowest ${at(1)} ms of ${times.length} searches`;
}
