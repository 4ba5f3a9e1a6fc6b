/*
 * One temporary table holds a plan of jobs, one row each; every table of the workshop is filled from it by one statement.
 * Ids have the form of version 7 (RFC 9562 section 5.7) and rise with the job, as those of the app do with time.
 */

/** The id of a row: which table, and the place in it. */
export function rowId(table: string, n: number): string {
  return `019d0000-${table}-7000-8000-${n.toString(16).padStart(12, '0')}`;
}
const id = (table: string, n: string) => `'019d0000-${table}-7000-8000-' || lpad(to_hex(${n}), 12, '0')`;
const JOB = id('0001', 'p.n');

export const COLUMNS = `
  n bigint, number text, kind text, stage text, quote_number text, person_name text, person_email text, repair_id text,
  repair_name text, model_id text, model_name text, sheet_id text, policy_version_id text, symptom text, price int, net int,
  tax int, gross int, list_price int, tax_category text, tax_rate int, serial text, serial_key text, user_id text,
  minutes int, lot_id text, unit_cost int, part_name text, nonce text, token_hash text, booked_at timestamptz,
  arrived_at timestamptz, assessed_at timestamptz, asked_at timestamptz, worked_at timestamptz, proved_at timestamptz,
  ready_at timestamptz, paid_at timestamptz, sent_at timestamptz, closed_at timestamptz, cancelled_at timestamptz,
  invoice_sequence int, claim_number text, claim_of bigint, claim_certificate text, claim_state text, cause text,
  ruling text, cost_minutes int, cost_parts int, cost_postage int, certificate_number text, revision int,
  superseded_at timestamptz, lines jsonb, signature text`;

const day = (instant: string) => `(${instant} AT TIME ZONE 'UTC')::date`;

const CUSTOMERS = `
  INSERT INTO "customer" ("id", "name", "email", "phone", "addressLines", "postcode", "town", "country", "createdAt")
  SELECT ${id('0002', 'p.n')}, person_name, person_email, '07700 900' || lpad((p.n % 1000)::text, 3, '0'),
    ARRAY[(1 + p.n % 90) || ' Chandler Row'], 'QM2 7HB', 'Sandmouth', 'GB', booked_at FROM "planned" p`;

const JOBS = `
  INSERT INTO "job" ("id", "number", "kind", "stage", "version", "customerId", "modelId", "repairId", "sheetId", "serialTyped",
    "serialKey", "problem", "history", "batteryAnswer", "dataAnswer", "termsAcceptedAt", "policyVersionId",
    "returnFeeMinor", "bookedAt", "arrivedAt", "readyAt",
    "sentBackAt", "closedAt", "promisedOn", "arrivedSerial", "serialComparison", "isSerialSettled", "carrier",
    "carrierReference")
  SELECT ${JOB}, number, kind, stage, 1, ${id('0002', 'p.n')}, model_id, repair_id, sheet_id, serial, serial_key, symptom,
    ARRAY[]::text[], 'none', 'none', contract.at, contract.policy, contract.fee, booked_at, arrived_at, ready_at, sent_at, closed_at,
    ${day('arrived_at')} + 9, CASE WHEN arrived_at IS NOT NULL THEN serial END, CASE WHEN arrived_at IS NOT NULL THEN 'same' END,
    arrived_at IS NOT NULL, CASE WHEN sent_at IS NULL THEN '' ELSE 'Harbour Post' END,
    CASE WHEN sent_at IS NULL THEN '' ELSE 'HP' || lpad(p.n::text, 9, '0') END
  FROM "planned" p
  LEFT JOIN LATERAL (
    SELECT booked_at AS at, policy_version_id AS policy, (SELECT "returnFeeMinor" FROM "workshop") AS fee WHERE kind = 'repair'
  ) contract ON TRUE`;

const ACCESSORIES = `
  INSERT INTO "accessory" ("id", "jobId", "name", "isTold", "isArrived")
  SELECT ${id('0004', 'p.n')}, ${JOB}, 'Power supply', true, CASE WHEN arrived_at IS NOT NULL THEN true END FROM "planned" p`;

const LINKS = `
  INSERT INTO "private_link" ("id", "jobId", "nonce", "tokenHash", "createdAt")
  SELECT ${id('0003', 'p.n')}, ${JOB}, nonce, token_hash, booked_at FROM "planned" p`;

const QUOTES = `
  INSERT INTO "quote" ("id", "number", "jobId", "currency") SELECT ${id('0005', 'p.n')}, quote_number, ${JOB}, $1 FROM "planned" p`;

/** The booking's own price, and for those who are asked a second one. */
const REVISIONS = `
  INSERT INTO "quote_revision" ("id", "quoteId", "revision", "state", "isGross", "reason", "onYes", "onNo", "issuedAt",
    "validUntil", "decidedAt", "decidedBy", "agreedText", "netMinor", "taxMinor", "grossMinor", "isInspectionFeeTakenOff")
  SELECT ${id('0006', 'p.n * 2')}, ${id('0005', 'p.n')}, 1, 'accepted', true, 'Booked from the price list', '', '', booked_at,
    ${day('booked_at')} + 30, booked_at, 'customer', repair_name || ' at the price of the list', net, tax, gross, true
  FROM "planned" p
  UNION ALL
  SELECT ${id('0006', 'p.n * 2 + 1')}, ${id('0005', 'p.n')}, 2, 'sent', true, 'The board is cracked beside the socket',
    'We mend the board as well.', 'We send the unit back.', asked_at, ${day('asked_at')} + 30, NULL, NULL, NULL, net, tax, gross, true
  FROM "planned" p WHERE asked_at IS NOT NULL`;

const QUOTE_LINES = `
  INSERT INTO "quote_line" ("id", "revisionId", "position", "kind", "description", "amountMinor", "taxCategory", "taxRateBps")
  SELECT ${id('0007', 'p.n * 4 + s')}, ${id('0006', 'p.n * 2 + s / 2')}, s % 2, CASE s % 2 WHEN 0 THEN 'labour' ELSE 'cover' END,
    CASE s % 2 WHEN 0 THEN repair_name ELSE 'Covered by the certificate' END,
    CASE WHEN s % 2 = 1 THEN -list_price ELSE list_price END, tax_category, tax_rate
  FROM "planned" p CROSS JOIN generate_series(0, 3) s
  WHERE (s < 2 OR asked_at IS NOT NULL) AND (s % 2 = 0 OR kind = 'claim')`;

const FINDINGS = `
  INSERT INTO "finding" ("id", "jobId", "text", "at", "userId")
  SELECT ${id('0008', 'p.n')}, ${JOB}, 'Socket loose, two pads lifted.', assessed_at, user_id
  FROM "planned" p WHERE assessed_at IS NOT NULL AND (p.n % 3 = 0 OR asked_at IS NOT NULL OR claim_number IS NOT NULL)`;

const WORK = `
  INSERT INTO "work_entry" ("id", "jobId", "text", "minutes", "at", "userId")
  SELECT ${id('0009', 'p.n')}, ${JOB}, repair_name, minutes, worked_at, user_id FROM "planned" p WHERE worked_at IS NOT NULL`;

const PART_USES = `
  INSERT INTO "part_use" ("id", "jobId", "lotId", "quantity", "unitCostMinor", "at", "userId")
  SELECT ${id('000a', 'p.n')}, ${JOB}, lot_id, 1, unit_cost, worked_at, user_id FROM "planned" p WHERE lot_id IS NOT NULL`;

/** Every check of the sheet passed; a reading lies in the middle of its limits, a little apart for every job. */
const CHECK_ENTRIES = `
  INSERT INTO "check_entry" ("id", "jobId", "checkId", "isPassed", "reading", "choice", "at", "userId")
  SELECT ${id('000b', 'p.n * 32 + c."position"')}, ${JOB}, c."id", true,
    CASE c."kind" WHEN 'reading' THEN (coalesce(c."low", c."high", 0) + coalesce(c."high", c."low", 0)) / 2
      + (coalesce(c."high", c."low", 0) - coalesce(c."low", c."high", 0)) * ((p.n * 37 % 81) - 40) / 100.0 END,
    CASE c."kind" WHEN 'choice' THEN c."passing"[1] END, proved_at, user_id
  FROM "planned" p JOIN "check_item" c ON c."sheetId" = p.sheet_id
  WHERE proved_at IS NOT NULL AND worked_at IS NOT NULL AND c."kind" <> 'connector'`;

const MESSAGES = `
  INSERT INTO "message" ("id", "jobId", "author", "userId", "text", "at", "readAt", "settledAt", "settledById", "settledHow")
  SELECT ${id('000c', 'p.n * 2 + s')}, ${JOB}, CASE s WHEN 0 THEN 'customer' ELSE 'staff' END, CASE s WHEN 1 THEN user_id END,
    CASE s WHEN 0 THEN 'Could you look at the volume wheel as well?' ELSE 'Gladly, without a charge.' END,
    booked_at + (s + 1) * interval '3 hours', booked_at + (s + 2) * interval '3 hours',
    CASE s WHEN 0 THEN booked_at + interval '6 hours' END, CASE s WHEN 0 THEN user_id END, CASE s WHEN 0 THEN 'answered' END
  FROM "planned" p CROSS JOIN generate_series(0, 1) s WHERE p.n % 8 = 0`;

const PAYMENTS = `
  INSERT INTO "payment" ("id", "jobId", "amountMinor", "currency", "method", "receivedOn", "at", "userId")
  SELECT ${id('000d', 'p.n')}, ${JOB}, gross, $1, 'transfer', ${day('paid_at')}, paid_at, user_id
  FROM "planned" p WHERE paid_at IS NOT NULL AND gross > 0`;

const INVOICES = `
  INSERT INTO "invoice" ("id", "kind", "year", "sequence", "number", "jobId", "currency", "isGross", "issuedOn", "suppliedOn", "dueOn",
    "issuedAt", "seller", "buyer", "netMinor", "taxMinor", "payableMinor")
  SELECT ${id('000e', 'p.n')}, 'invoice', date_part('year', ${day('ready_at')}), invoice_sequence,
    date_part('year', ${day('ready_at')}) || '-' || lpad(invoice_sequence::text, 5, '0'), ${JOB}, $1, true, ${day('ready_at')},
    ${day('ready_at')}, ${day('ready_at')} + 14, ready_at,
    (SELECT jsonb_build_object('name', w."name", 'addressLines', w."addressLines", 'postcode', w."postcode", 'town', w."town",
      'country', w."country", 'email', w."email", 'phone', w."phone", 'taxNumber', w."taxNumber", 'taxName', w."taxName",
      'taxExemptReason', w."taxExemptReason", 'bankHolder', w."bankHolder", 'iban', w."iban", 'bic', w."bic",
      'payLink', w."payLink", 'paymentText', w."paymentText") FROM "workshop" w),
    jsonb_build_object('name', person_name, 'addressLines', jsonb_build_array((1 + p.n % 90) || ' Chandler Row'), 'postcode',
      'QM2 7HB', 'town', 'Sandmouth', 'country', 'GB', 'email', person_email),
    net, tax, gross
  FROM "planned" p WHERE invoice_sequence IS NOT NULL`;

const INVOICE_LINES = `
  INSERT INTO "invoice_line" ("id", "invoiceId", "position", "kind", "description", "amountMinor", "netMinor", "taxCategory", "taxRateBps")
  SELECT ${id('000f', 'p.n')}, ${id('000e', 'p.n')}, 0, 'labour', repair_name, price, net, tax_category, tax_rate
  FROM "planned" p WHERE invoice_sequence IS NOT NULL`;

const INVOICE_TAXES = `
  INSERT INTO "invoice_tax" ("invoiceId", "category", "rateBps", "baseMinor", "taxMinor")
  SELECT ${id('000e', 'p.n')}, tax_category, tax_rate, net, tax FROM "planned" p WHERE invoice_sequence IS NOT NULL`;

const CERTIFICATES = `
  INSERT INTO "certificate" ("id", "number", "revision", "jobId", "policyVersionId", "modelName", "serialTyped", "serialKey",
    "issuedAt", "issuedOn", "endsOn", "supersededAt", "keyId", "signature", "fileKey", "sha256")
  SELECT ${id('0011', 'p.n')}, certificate_number, revision, ${JOB}, policy_version_id, model_name, serial, serial_key, sent_at,
    ${day('sent_at')}, (SELECT max(l->>'endsOn')::date FROM jsonb_array_elements(lines) l), superseded_at, 'k1', signature,
    'certificates/' || certificate_number || '-' || revision || '.pdf', repeat('0', 64)
  FROM "planned" p WHERE certificate_number IS NOT NULL`;

const CERTIFICATE_LINES = `
  INSERT INTO "certificate_line" ("id", "certificateId", "key", "position", "kind", "description", "symptoms", "term", "startsOn",
    "renewedUntil", "renewedFrom", "endsOn", "lotId")
  SELECT ${id('0012', 'p.n * 4 + l.place')}, ${id('0011', 'p.n')}, l.line->>'id', l.place - 1, l.line->>'kind', l.line->>'description',
    ARRAY(SELECT jsonb_array_elements_text(l.line->'symptoms')), l.line->>'term', (l.line->>'startsOn')::date,
    (l.line->>'renewedUntil')::date, (l.line->>'renewedFrom')::date, (l.line->>'endsOn')::date, l.line->>'lotId'
  FROM "planned" p CROSS JOIN LATERAL jsonb_array_elements(p.lines) WITH ORDINALITY AS l (line, place)
  WHERE certificate_number IS NOT NULL`;

const CLAIMS = `
  INSERT INTO "claim" ("id", "number", "certificateId", "certificateNumber", "jobId", "state", "openedOn", "openedAt", "symptom",
    "details", "preliminary", "cause", "ruling", "isEvidenceClear", "reasonText", "ruledAt", "ruledBy", "costMinutes",
    "costPartsMinor", "costPostageMinor", "closedAt")
  SELECT ${id('0013', 'p.n')}, claim_number, ${id('0011', 'claim_of')}, claim_certificate, ${JOB}, claim_state, ${day('booked_at')},
    booked_at, symptom, '', jsonb_build_object('answer', 'covered-subject-to-inspection', 'reasons',
      jsonb_build_array(jsonb_build_object('code', 'serial-same', 'serial', serial)), 'needs', jsonb_build_array(), 'nextStep', NULL),
    cause, ruling, CASE WHEN cause IS NOT NULL THEN true END, CASE WHEN cause IS NOT NULL THEN 'Looked at on the bench.' END,
    CASE WHEN cause IS NOT NULL THEN assessed_at END, CASE WHEN cause IS NOT NULL THEN user_id END, cost_minutes, cost_parts,
    cost_postage, CASE WHEN claim_state = 'closed' THEN sent_at END
  FROM "planned" p WHERE claim_number IS NOT NULL`;

const HELD = `
  INSERT INTO "held_interval" ("id", "certificateNumber", "claimNumber", "fromDay", "toDay")
  SELECT ${id('0014', 'p.n')}, claim_certificate, claim_number, ${day('booked_at')}, ${day('sent_at')}
  FROM "planned" p WHERE claim_number IS NOT NULL AND sent_at IS NOT NULL`;

const MAILS = `
  INSERT INTO "mail" ("id", "template", "toAddress", "jobId", "data", "messageId", "state", "attempts", "queuedAt", "sentAt")
  SELECT ${id('0015', 'p.n')}, CASE WHEN kind = 'claim' THEN 'claim-opened' ELSE 'job-booked' END, person_email, ${JOB},
    CASE WHEN kind = 'claim' THEN jsonb_build_object('claimNumber', claim_number, 'certificateNumber', claim_certificate) ELSE '{}' END,
    'planned-' || p.n || '@example.org', 'sent', 1, booked_at, booked_at + interval '1 minute'
  FROM "planned" p`;

type Step = {
  slot: number;
  kind: string;
  at: string;
  by: 'customer' | 'staff' | 'clock';
  from?: string;
  to?: string;
  data: string;
  where: string;
};
const moved = (
  slot: number,
  move: string,
  from: string,
  to: string,
  at: string,
  where: string,
  by: Step['by'] = 'staff',
): Step => ({
  slot,
  kind: 'moved',
  at,
  by,
  from,
  to,
  data: `jsonb_build_object('move', '${move}', 'note', '')`,
  where,
});

const HISTORY: readonly Step[] = [
  {
    slot: 1,
    kind: 'booked',
    at: 'booked_at',
    by: 'customer',
    to: 'booked',
    data: `jsonb_build_object('accessories', jsonb_build_array('Power supply'), 'quoteNumber', quote_number)`,
    where: 'true',
  },
  {
    slot: 2,
    kind: 'claim-opened',
    at: 'booked_at',
    by: 'customer',
    data: `jsonb_build_object('claim', claim_number, 'certificate', claim_certificate)`,
    where: 'claim_number IS NOT NULL',
  },
  moved(3, 'cancel', 'booked', 'cancelled', 'cancelled_at', 'cancelled_at IS NOT NULL', 'customer'),
  {
    slot: 4,
    kind: 'unit-arrived',
    at: 'arrived_at',
    by: 'staff',
    from: 'booked',
    to: 'arrived',
    data: `jsonb_build_object('serial', serial, 'comparison', 'same', 'differences', jsonb_build_array(), 'photos', 0)`,
    where: 'arrived_at IS NOT NULL',
  },
  moved(5, 'assess', 'arrived', 'assessing', 'assessed_at', 'assessed_at IS NOT NULL'),
  {
    slot: 6,
    kind: 'claim-ruled',
    at: 'assessed_at',
    by: 'staff',
    data: `jsonb_build_object('claim', claim_number, 'cause', cause, 'ruling', ruling, 'isFinal', true)`,
    where: 'cause IS NOT NULL',
  },
  {
    slot: 7,
    kind: 'offer-written',
    at: 'asked_at',
    by: 'staff',
    data: `jsonb_build_object('revision', 2, 'gross', gross)`,
    where: 'asked_at IS NOT NULL',
  },
  moved(8, 'ask-approval', 'assessing', 'awaiting-approval', 'asked_at', 'asked_at IS NOT NULL'),
  moved(9, 'wait-for-parts', 'assessing', 'awaiting-parts', 'assessed_at', `stage = 'awaiting-parts'`),
  moved(10, 'start-bench', 'assessing', 'on-bench', 'worked_at', 'worked_at IS NOT NULL'),
  {
    slot: 11,
    kind: 'work-recorded',
    at: 'worked_at',
    by: 'staff',
    data: `jsonb_build_object('workId', ${id('0009', 'p.n')}, 'minutes', minutes)`,
    where: 'worked_at IS NOT NULL',
  },
  {
    slot: 12,
    kind: 'part-used',
    at: 'worked_at',
    by: 'staff',
    data: `jsonb_build_object('partUseId', ${id('000a', 'p.n')}, 'part', part_name, 'lot', right(lot_id, 4), 'quantity', 1)`,
    where: 'lot_id IS NOT NULL',
  },
  moved(13, 'prove', 'on-bench', 'proving', 'proved_at', 'proved_at IS NOT NULL AND worked_at IS NOT NULL'),
  moved(14, 'pass-checks', 'proving', 'ready', 'ready_at', 'ready_at IS NOT NULL AND worked_at IS NOT NULL'),
  moved(
    15,
    'return-unrepaired',
    'assessing',
    'ready',
    'ready_at',
    'ready_at IS NOT NULL AND worked_at IS NULL',
  ),
  {
    slot: 16,
    kind: 'invoice-issued',
    at: 'ready_at',
    by: 'staff',
    data: `jsonb_build_object('number', date_part('year', ${day('ready_at')}) || '-' || lpad(invoice_sequence::text, 5, '0'), 'payable', gross)`,
    where: 'invoice_sequence IS NOT NULL',
  },
  {
    slot: 17,
    kind: 'payment-recorded',
    at: 'paid_at',
    by: 'staff',
    data: `jsonb_build_object('paymentId', ${id('000d', 'p.n')}, 'amount', gross)`,
    where: 'paid_at IS NOT NULL AND gross > 0',
  },
  {
    slot: 18,
    kind: 'sent-back',
    at: 'sent_at',
    by: 'staff',
    from: 'ready',
    to: 'sent-back',
    data: `jsonb_build_object('carrier', 'Harbour Post', 'reference', 'HP' || lpad(p.n::text, 9, '0'), 'certificate', certificate_number)`,
    where: 'sent_at IS NOT NULL',
  },
  moved(19, 'close', 'sent-back', 'closed', 'closed_at', 'closed_at IS NOT NULL', 'clock'),
];

const EVENTS = `
  INSERT INTO "job_event" ("id", "jobId", "version", "kind", "at", "actorKind", "actorId", "fromStage", "toStage", "data")
  SELECT ${id('0016', 'p.n * 32 + p.slot')}, ${JOB}, row_number() OVER (PARTITION BY p.n ORDER BY p.slot), p.event, p.at, p.by,
    CASE p.by WHEN 'staff' THEN p.user_id END, p.from_stage, p.to_stage, p.data
  FROM (${HISTORY.map(
    (
      step,
    ) => `SELECT n, ${step.slot} AS slot, '${step.kind}' AS event, ${step.at} AS at, '${step.by}' AS by, user_id,
      ${step.from ? `'${step.from}'` : 'NULL'} AS from_stage, ${step.to ? `'${step.to}'` : 'NULL'} AS to_stage, ${step.data} AS data
      FROM "planned" p WHERE ${step.where}`,
  ).join(' UNION ALL ')}) p`;

const VERSIONS = `
  UPDATE "job" j SET "version" = e.last
  FROM (SELECT "jobId", max("version") AS last FROM "job_event" WHERE "jobId" IN (SELECT ${JOB} FROM "planned" p) GROUP BY 1) e
  WHERE j."id" = e."jobId"`;

/** In the order that foreign keys ask for; $1 is the currency. */
export const FROM_PLAN: readonly string[] = [
  CUSTOMERS,
  JOBS,
  ACCESSORIES,
  LINKS,
  QUOTES,
  REVISIONS,
  QUOTE_LINES,
  FINDINGS,
  WORK,
  PART_USES,
  CHECK_ENTRIES,
  MESSAGES,
  PAYMENTS,
  INVOICES,
  INVOICE_LINES,
  INVOICE_TAXES,
  CERTIFICATES,
  CERTIFICATE_LINES,
  CLAIMS,
  HELD,
  MAILS,
  EVENTS,
  VERSIONS,
];

/** Year and last number given in it, beside what was given before. */
export const INVOICE_SERIES = `
  INSERT INTO "invoice_series" ("year", "last") VALUES ($1, $2)
  ON CONFLICT ("year") DO UPDATE SET "last" = greatest("invoice_series"."last", excluded."last")`;
