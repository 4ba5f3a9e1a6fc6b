import { randomBytes } from 'node:crypto';
import type { ClientBase } from 'pg';
import { dayInZone } from '@/lib/calendar/day';
import { hashToken, linkToken } from '@/lib/jobs/private-link';
import { foldSerial } from '@/lib/numbers/serial';
import { rewriteWatch } from '@/lib/returns/watch-sql';
import type { SignedCertificate } from '@/lib/warranty/rules/signature-payload';
import { readShop } from './known-shop';
import { TECHNICIANS } from './people-names';
import { type PlannedJob, planJobs } from './plan-jobs';
import { COLUMNS, FROM_PLAN, INVOICE_SERIES, rowId } from './seed-rows';

export type SeedMany = {
  jobs: number;
  /** another seed, other people and numbers */
  seed: number;
  now?: Date;
  /** how far back they reach */
  years?: number;
  /** signs certificates as the workshop would; without it they are kept unsigned and their page says so */
  sign?: (certificate: SignedCertificate) => string;
};

/** Jobs written in one transaction: some ten thousand rows. */
const AT_ONCE = 1000;

/**
 * Fills a workshop that has its price list and no jobs of this kind yet with so many whole jobs, by bulk SQL instead of the
 * use cases that write them one by one: customers, prices, events, work, parts of lots, readings, payments, invoices,
 * certificates, and a claim on one in twenty, ruled and with its cost. All made up. Every constraint holds, and the rows
 * are the same for the same seed, but for the secrets of private links.
 */
export async function seedMany(client: ClientBase, o: SeedMany): Promise<void> {
  const now = o.now ?? new Date();
  const shop = await readShop(client);
  const hands = await hireTechnicians(client, now);
  const { jobs, lots } = planJobs({ ...o, now, years: o.years ?? 4, repairs: shop.repairs, hands });
  await client.query(
    `INSERT INTO "lot" ("id", "partId", "code", "supplier", "receivedOn", "received", "inStock", "unitCostMinor")
      SELECT l.* FROM jsonb_to_recordset($1::jsonb) AS l (id text, part text, code text, supplier text, day date, received int, left_ int, cost int)`,
    [
      JSON.stringify(
        lots.all().map((lot) => ({
          id: lot.id,
          part: lot.partId,
          code: lot.code,
          supplier: lot.supplier,
          day: new Date(lot.receivedAt),
          received: lot.used + 4,
          left_: 4,
          cost: lot.unitCostMinor,
        })),
      ),
    ],
  );
  const sequences = new Map<number, number>();
  await client.query(`CREATE TEMP TABLE "planned" (${COLUMNS})`);
  // Invoices take their numbers in the order of their days, which is not quite that of the bookings.
  const invoiced = invoiceNumbers(jobs, sequences);
  for (let from = 0; from < jobs.length; from += AT_ONCE) {
    const rows = jobs.slice(from, from + AT_ONCE).map((job) => rowOf(job, o, invoiced));
    await client.query('BEGIN');
    await client.query('TRUNCATE "planned"');
    await client.query(
      `INSERT INTO "planned" SELECT * FROM jsonb_populate_recordset(NULL::"planned", $1::jsonb)`,
      [JSON.stringify(rows)],
    );
    for (const statement of FROM_PLAN)
      await client.query(statement, statement.includes('$1') ? [shop.currency] : []);
    await client.query('COMMIT');
  }
  await client.query('DROP TABLE "planned"');
  for (const [year, last] of sequences) await client.query(INVOICE_SERIES, [year, last]);
  await client.query('ANALYZE');
  for (const statement of rewriteWatch('all')) await client.query(statement);
  await client.query('ANALYZE "unit_watch", "line_watch"');
}

async function hireTechnicians(client: ClientBase, now: Date): Promise<string[]> {
  for (const [i, { name, initials }] of TECHNICIANS.entries()) {
    await client.query(
      `INSERT INTO "auth_user" ("id", "name", "email", "role", "initials", "createdAt", "updatedAt")
        VALUES ($1, $2, $3, 'bench', $4, $5, $5)`,
      [`technician-${i + 1}`, name, `${initials.toLowerCase()}@quayandalder.example.org`, initials, now],
    );
  }
  return TECHNICIANS.map((_, i) => `technician-${i + 1}`);
}

function invoiceNumbers(jobs: readonly PlannedJob[], sequences: Map<number, number>): Map<number, number> {
  const numbers = new Map<number, number>();
  const due = jobs.filter((job) => job.kind === 'repair' && job.readyAt !== null);
  for (const job of due.toSorted((a, b) => (a.readyAt ?? 0) - (b.readyAt ?? 0))) {
    const year = new Date(job.readyAt ?? 0).getUTCFullYear();
    const sequence = (sequences.get(year) ?? 0) + 1;
    sequences.set(year, sequence);
    numbers.set(job.n, sequence);
  }
  return numbers;
}

const instant = (ms: number | null) => (ms === null ? null : new Date(ms).toISOString());

function rowOf(job: PlannedJob, { sign }: SeedMany, invoiced: ReadonlyMap<number, number>) {
  const { repair, person, claim, certificate } = job;
  const link = { id: rowId('0003', job.n), nonce: randomBytes(24).toString('base64url') };
  return {
    n: job.n,
    number: job.number,
    kind: job.kind,
    stage: job.stage,
    quote_number: job.quoteNumber,
    person_name: person.name,
    person_email: person.email,
    repair_id: repair.id,
    repair_name: repair.name,
    model_id: repair.modelId,
    model_name: repair.modelName,
    sheet_id: repair.sheetId,
    policy_version_id: repair.policyVersionId,
    symptom: repair.symptoms[0] ?? '',
    price: claim ? 0 : repair.priceMinor,
    net: claim ? 0 : repair.netMinor,
    tax: claim ? 0 : repair.taxMinor,
    gross: claim ? 0 : repair.grossMinor,
    list_price: repair.priceMinor,
    tax_category: repair.taxCategory,
    tax_rate: repair.taxRateBps,
    serial: job.serial,
    serial_key: foldSerial(job.serial),
    user_id: job.userId,
    minutes: job.minutes,
    lot_id: job.lotId,
    unit_cost: job.unitCostMinor,
    part_name: repair.part?.name ?? '',
    nonce: link.nonce,
    token_hash: hashToken(linkToken(link)),
    booked_at: instant(job.bookedAt),
    arrived_at: instant(job.arrivedAt),
    assessed_at: instant(job.assessedAt),
    asked_at: instant(job.askedAt),
    worked_at: instant(job.workedAt),
    proved_at: instant(job.provedAt),
    ready_at: instant(job.readyAt),
    paid_at: claim ? null : instant(job.paidAt),
    sent_at: instant(job.sentBackAt),
    closed_at: instant(job.closedAt),
    cancelled_at: instant(job.cancelledAt),
    invoice_sequence: invoiced.get(job.n) ?? null,
    claim_number: claim?.number ?? null,
    claim_of: claim?.of ?? null,
    claim_certificate: claim?.certificateNumber ?? null,
    claim_state: claim?.state ?? null,
    cause: claim?.cause ?? null,
    ruling: claim?.ruling ?? null,
    cost_minutes: claim?.costMinutes ?? null,
    cost_parts: claim?.costPartsMinor ?? null,
    cost_postage: claim?.costPostageMinor ?? null,
    certificate_number: certificate?.number ?? null,
    revision: certificate?.revision ?? null,
    superseded_at: instant(certificate?.supersededAt ?? null),
    lines: certificate?.lines ?? [],
    signature: certificate ? signatureOf(job, certificate, sign) : '',
  };
}

function signatureOf(
  job: PlannedJob,
  certificate: NonNullable<PlannedJob['certificate']>,
  sign: SeedMany['sign'],
): string {
  if (!sign || job.sentBackAt === null) return 'unsigned';
  return sign({
    keyId: 'k1',
    number: certificate.number,
    revision: certificate.revision,
    serial: foldSerial(job.serial),
    issuedOn: dayInZone(new Date(job.sentBackAt), 'UTC'),
    lines: certificate.lines.map(({ kind, term, startsOn, endsOn }) => ({ kind, term, startsOn, endsOn })),
  });
}
