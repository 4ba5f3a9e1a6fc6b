import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';

/** A digest of every table, by its name. */
export function digests(): Promise<Map<string, string>> {
  return onServer(config.databaseUrl, async (client) => {
    const tables = await client.query<{ name: string }>(
      "select tablename as name from pg_tables where schemaname = 'public' and tablename <> '_prisma_migrations' order by 1",
    );
    const found = new Map<string, string>();
    for (const { name } of tables.rows) {
      const { rows } = await client.query<{ digest: string }>(
        `select count(*) || ' ' || coalesce(md5(string_agg(md5(t::text), '' order by md5(t::text))), '') as digest from "${name}" t`,
      );
      found.set(name, rows[0]?.digest ?? '');
    }
    return found;
  });
}

/** Sentences that must hold of the rows whatever was asked of the app; each query finds the rows that break one. */
const HOLDS: [sentence: string, breaks: string][] = [
  [
    'an invoice adds up',
    'select number from invoice where "payableMinor" <> "netMinor" + "taxMinor" + "roundingMinor"',
  ],
  [
    'an invoice is the sum of its taxes',
    'select number from invoice i where (select coalesce(sum("baseMinor"), 0) from invoice_tax where "invoiceId" = i.id) <> "netMinor" or (select coalesce(sum("taxMinor"), 0) from invoice_tax where "invoiceId" = i.id) <> "taxMinor"',
  ],
  [
    'invoices are numbered without a gap',
    'select year from invoice group by year having max(sequence) <> count(*)',
  ],
  [
    'credit stays within its invoice',
    'select i.number from invoice i join invoice c on c."correctsId" = i.id group by i.id having sum(c."payableMinor") > i."payableMinor"',
  ],
  [
    'stock is what was received less what was used, at most',
    'select l.id from lot l where "inStock" < 0 or "inStock" > received or "inStock" + (select coalesce(sum(quantity), 0) from part_use where "lotId" = l.id) > received',
  ],
  [
    'one certificate of a number is in force',
    'select number from certificate where "supersededAt" is null group by number having count(*) > 1',
  ],
  [
    'a job has a known history',
    'select number from job j where not exists (select 1 from job_event where "jobId" = j.id)',
  ],
  ['there is one workshop', 'select 1 from workshop having count(*) <> 1'],
  [
    'somebody can still sign in as the owner',
    `select 1 where not exists (select 1 from auth_user where role = 'owner' and "isActive")`,
  ],
  ['every role is known', "select id from auth_user where role not in ('front', 'bench', 'owner')"],
];

/** What of the rules above does not hold, and which text no field of a form may be long enough for. */
export function brokenRules(): Promise<string[]> {
  return onServer(config.databaseUrl, async (client) => {
    const faults: string[] = [];
    for (const [sentence, breaks] of HOLDS) {
      const { rowCount } = await client.query(breaks);
      if (rowCount) faults.push(`${rowCount} rows break "${sentence}"`);
    }
    const columns = await client.query<{ table: string; column: string }>(
      "select table_name as table, column_name as column from information_schema.columns where table_schema = 'public' and data_type = 'text'",
    );
    for (const { table, column } of columns.rows) {
      // 40,000 characters is the longest text a form takes, the workshop's terms.
      const { rowCount } = await client.query(
        `select 1 from "${table}" where length("${column}") > 40000 limit 1`,
      );
      if (rowCount) faults.push(`${table}.${column} holds a text that no form should have taken`);
    }
    return faults;
  });
}
