import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';

/** A digest of every table, by its name, and one of who may do what, as "people". */
export function digests(): Promise<Map<string, string>> {
  return onServer(config.databaseUrl, async (client) => {
    const tables = await client.query<{ name: string }>(
      "select tablename as name from pg_tables where schemaname = 'public' and tablename <> '_prisma_migrations' order by 1",
    );
    const found = new Map<string, string>();
    for (const { name } of tables.rows) {
      // An invoice's document is drawn and kept when it is first asked for, by whoever may see it.
      const row = name === 'invoice' ? `(to_jsonb(t) - 'fileKey' - 'sha256')` : 't';
      const { rows } = await client.query<{ digest: string }>(
        `select count(*) || ' ' || coalesce(md5(string_agg(md5(${row}::text), '' order by md5(${row}::text))), '') as digest from "${name}" t`,
      );
      found.set(name, rows[0]?.digest ?? '');
    }
    // Everybody may change their own password and second step, nobody but the owner who may do what.
    const people = await client.query<{ digest: string }>(
      `select string_agg(concat_ws(' ', id, email, role, "isActive"), ', ' order by id) as digest from auth_user`,
    );
    found.set('people', people.rows[0]?.digest ?? '');
    return found;
  });
}

const CATALOGUE = ['family', 'model', 'repair', 'repair_price', 'repair_part', 'policy', 'policy_version'];
const OWNERS = [
  ...CATALOGUE,
  'pin_table',
  'lot_recall',
  'lot_recall_lifted',
  'workshop',
  'closing_day',
  'signing_key',
  'carrier',
];
const BENCH = [
  'part',
  'lot',
  'lot_event',
  'part_order',
  'part_order_move',
  'part_use',
  'work_entry',
  'check_entry',
  'jumper_wire',
  'finding',
  'inspection_entry',
  'check_sheet',
  'check_item',
];
/** Of the front desk and the owner. */
const DESK = ['payment', 'journal_taking'];
/** What an answer of a customer changes beside the price and the job, whether they press it or the front desk writes it down. */
const BY_ANSWER = ['awaited_part', 'part_not_needed', 'sheet_beside', 'line_watch', 'unit_watch'];

/** Every table, once, by who of the staff may write to it: a new one has to be put where it belongs. */
export const TABLES = {
  OWNERS,
  BENCH,
  DESK,
  BY_ANSWER,
  /** Nobody's alone: the jobs, claims and papers that everybody has a part in, and each one's own sign-in. */
  EVERYBODYS: [
    'accessory',
    'attempt',
    'auth_account',
    'auth_session',
    'auth_two_factor',
    'auth_user',
    'auth_verification',
    'booking_draft',
    'certificate',
    'certificate_line',
    'claim',
    'customer',
    'held_interval',
    'invoice',
    'invoice_line',
    'invoice_series',
    'invoice_tax',
    'job',
    'job_event',
    'mail',
    'message',
    'photo',
    'private_link',
    'quote',
    'quote_event',
    'quote_line',
    'quote_request',
    'quote_revision',
    'seen_by',
    'terms_text',
    'unclaimed_notice',
  ],
};

/** What of the changes between two readings of the tables this caller may not have made, by the table of permissions. */
export function forbiddenChanges(
  caller: string,
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
): string[] {
  const changed = [...after].filter(([table, digest]) => digest !== before.get(table));
  const may = MAY_WRITE[caller];
  const mayNot = MAY_NOT_WRITE[caller] ?? [];
  return changed
    .filter(([table]) => mayNot.includes(table) || (may !== undefined && !may.includes(table)))
    .map(([table, digest]) => `${caller} has changed the table ${table}: ${before.get(table)} -> ${digest}`);
}

/** What somebody without a session may leave behind in tables; everything else has to stay as it was, row for row. */
const MAY_WRITE: Record<string, readonly string[]> = {
  nobody: [
    ...['attempt', 'booking_draft', 'auth_session', 'auth_verification', 'auth_two_factor'],
    // What a customer does with a booking or a private link: this and what follows from it by itself.
    ...[
      'customer',
      'job',
      'terms_text',
      'accessory',
      'job_event',
      'private_link',
      'photo',
      'message',
      'mail',
      'seen_by',
    ],
    ...['quote', 'quote_request', 'quote_event', 'quote_revision', 'quote_line', 'claim', 'held_interval'],
    // Who withdraws from a contract gets an invoice for the part that was done, or a credit (lib/jobs/withdraw.ts).
    ...['invoice', 'invoice_line', 'invoice_tax', 'invoice_series'],
    // A yes says on which sheets a unit is proved, who contests a ruling takes back what came of it.
    ...BY_ANSWER,
  ],
};
const MAY_NOT_WRITE: Record<string, readonly string[]> = {
  front: [...OWNERS, ...BENCH, 'people'],
  bench: [...OWNERS, ...DESK, 'people'],
};

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
