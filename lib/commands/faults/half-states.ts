import { LINES_ASTRAY, UNITS_ASTRAY } from '@/lib/returns/watch-sql';

/** Asks one database: rows of a SELECT without values. */
export type Ask = (sql: string) => Promise<{ rows: Record<string, unknown>[] }>;

export type HalfState = { rule: string; which: string[] };

/**
 * Looks for changes of which only a part is there: what a use case writes in one transaction must be there together.
 * Holds for every database of this program, at every moment, seen from one snapshot; the answer is empty then.
 *
 * findHalfStates((sql) => client.query(sql)) -> [{ rule: 'a job's stage is the one its history ends in', which: ['J…'] }]
 */
export async function findHalfStates(ask: Ask): Promise<HalfState[]> {
  const found: HalfState[] = [];
  await ask('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
  try {
    for (const [rule, sql] of RULES) {
      const { rows } = await ask(sql);
      if (rows.length > 0) found.push({ rule, which: rows.map((row) => String(row['which'])) });
    }
  } finally {
    await ask('COMMIT');
  }
  return found;
}

const ACCEPTED = `exists (select 1 from quote q join quote_revision r on r."quoteId" = q.id
  where q."jobId" = j.id and r.state = 'accepted' and r."grossMinor" > 0)`;
const NOT_ERASED = `exists (select 1 from customer c where c.id = j."customerId" and c."erasedAt" is null)`;
const mailOf = (template: string) =>
  `exists (select 1 from mail m where m."jobId" = e."jobId" and m.template = '${template}')`;

/** The job ended for its booking: that has its private links, and of its letters only those that reached somebody stay. */
const IS_OF_BOOKING = `exists (select 1 from job_event o where o."jobId" = j.id and o.kind = 'is-of-booking')`;

/** Each names what must hold, and selects what breaks it. */
const RULES: readonly (readonly [rule: string, sql: string])[] = [
  [
    'a job has one event for each of its versions',
    `select j.number as which from job j left join job_event e on e."jobId" = j.id
     group by j.id having j.version <> count(e.id) or j.version <> coalesce(max(e.version), 0)`,
  ],
  [
    'a job stands where its history ends',
    `select j.number as which from job j where j.stage is distinct from
       (select e."toStage" from job_event e where e."jobId" = j.id and e."toStage" is not null
        order by e.version desc limit 1)`,
  ],
  [
    'a quote that was asked for has one event for each of its versions',
    `select q.number as which from quote q join quote_request r on r."quoteId" = q.id
     left join quote_event e on e."quoteId" = q.id
     group by q.id having q.version <> count(e.id) or q.version <> coalesce(max(e.version), 0)`,
  ],
  [
    'a price that was asked for has what it was sent with',
    `select q.number as which from quote q join quote_revision r on r."quoteId" = q.id where r.proposal <> ''
       and num_nulls(r."policyVersionId", r."returnFeeMinor", r."inspectionFeeMinor", r."replacementText") > 0`,
  ],
  [
    'a booked job has its private link',
    `select j.number as which from job j
     where ${NOT_ERASED} and not ${IS_OF_BOOKING}
       and not exists (select 1 from private_link l where l."jobId" = j.id)`,
  ],
  [
    'a job is proved on a sheet of its repair, which is one of its model',
    `select j.number as which from job j join check_sheet s on s.id = j."sheetId" join repair r on r.id = j."repairId"
     where s."repairId" <> j."repairId" or r."modelId" <> j."modelId"`,
  ],
  [
    'a repair has its quote',
    `select j.number as which from job j
     where j.kind = 'repair' and not exists (select 1 from quote q where q."jobId" = j.id)`,
  ],
  [
    'a job was sent back exactly when its history says so, and its unit is not here again',
    `select j.number as which from job j where (j."sentBackAt" is not null) <> coalesce(
       (select e.kind = 'sent-back' from job_event e where e."jobId" = j.id and e.kind in ('sent-back', 'came-back', 'dispatch-undone')
        order by e.version desc limit 1), false)`,
  ],
  [
    'a parcel is looked for exactly when the history of its job says so',
    `select j.number as which from job j where (j."soughtSince" is not null) <> coalesce(
       (select e.kind = 'parcel-sought' from job_event e where e."jobId" = j.id
        and e.kind in ('parcel-sought', 'search-ended', 'came-back', 'dispatch-undone')
        order by e.version desc limit 1), false)`,
  ],
  [
    'a job that went back more than once has one certificate at most',
    `select e."jobId" as which from job_event e where e.kind = 'sent-back'
     group by e."jobId" having count(*) > 1 and (count(e.data->>'certificate') > 1
       or (select count(*) from certificate c where c."jobId" = e."jobId") > 1)`,
  ],
  [
    'a unit left with a carrier and its reference, or its customer collected it',
    `select j.number as which from job j where j."sentBackAt" is not null and (j.carrier = '') <> coalesce(
       (select e.data->>'isCollected' = 'true' from job_event e where e."jobId" = j.id and e.kind = 'sent-back'
        order by e.version desc limit 1), false)`,
  ],
  [
    'a certificate is named by the dispatch that issued it',
    `select c.number as which from certificate c where not exists (select 1 from job_event e
       where e."jobId" = c."jobId" and e.kind = 'sent-back' and e.data->>'certificate' = c.number)`,
  ],
  [
    'a certificate that a dispatch names is there',
    `select e.data->>'certificate' as which from job_event e
     where e.kind = 'sent-back' and e.data->>'certificate' is not null and not exists
       (select 1 from certificate c where c."jobId" = e."jobId" and c.number = e.data->>'certificate')`,
  ],
  [
    'a certificate ends with its longest line',
    `select c.number as which from certificate c left join certificate_line l on l."certificateId" = c.id
     group by c.id having max(l."endsOn") is distinct from c."endsOn"`,
  ],
  [
    'of a certificate the last revision alone is in force, and none is left out',
    `select number as which from certificate group by number
     having count(*) <> max(revision) or count(*) filter (where "supersededAt" is null) <> 1
       or max(revision) filter (where "supersededAt" is null) <> max(revision)`,
  ],
  [
    'a claim whose unit was sent back, and not by mistake alone, is closed with its days given back',
    `select c.number as which from claim c join job_event e on e."jobId" = c."jobId" and e.kind = 'sent-back'
     where (c.state <> 'closed' or not exists (select 1 from held_interval h where h."claimNumber" = c.number))
       and (e.data->>'certificate' is not null or (select count(*) filter (where d.kind = 'sent-back')
         > count(*) filter (where d.kind = 'dispatch-undone') from job_event d where d."jobId" = c."jobId"))`,
  ],
  ['a unit counts among returns as its records say', UNITS_ASTRAY],
  ['a cover line counts among returns as its records say', LINES_ASTRAY],
  [
    'the numbers of a year run from 1 without a gap',
    `select coalesce(s.year, i.year)::text as which from invoice_series s full join
       (select year, count(*) as many, max(sequence) as highest from invoice group by year) i on i.year = s.year
     where i.many is distinct from s.last or i.highest is distinct from s.last`,
  ],
  [
    'an invoice is the sum of its lines and taxes',
    `select i.number as which from invoice i
     where i."netMinor" <> (select coalesce(sum(l."netMinor"), 0) from invoice_line l where l."invoiceId" = i.id)
        or i."taxMinor" <> (select coalesce(sum(t."taxMinor"), 0) from invoice_tax t where t."invoiceId" = i.id)`,
  ],
  [
    'an invoice is in the history of its job',
    `select i.number as which from invoice i where not exists (select 1 from job_event e
       where e."jobId" = i."jobId" and e.kind = i.kind || '-issued' and e.data->>'number' = i.number)`,
  ],
  [
    'an invoice that a history names is there',
    `select e.data->>'number' as which from job_event e
     where e.kind in ('invoice-issued', 'credit-note-issued') and not exists
       (select 1 from invoice i where i."jobId" = e."jobId" and i.number = e.data->>'number')`,
  ],
  [
    'a job that is ready at an agreed price has its invoice',
    `select j.number as which from job j where j."readyAt" is not null and ${ACCEPTED}
     and not exists (select 1 from invoice i where i."jobId" = j.id)`,
  ],
  [
    'a unit that arrived at an agreed price has its promise',
    `select j.number as which from job j
     where j."arrivedAt" is not null and j."promisedOn" is null and ${ACCEPTED}`,
  ],
  [
    'a payment is in the history of its job',
    `select p.id as which from payment p where not exists (select 1 from job_event e
       where e."jobId" = p."jobId" and e.kind = 'payment-recorded' and e.data->>'paymentId' = p.id)`,
  ],
  [
    'a payment that a history names is there',
    `select e.data->>'paymentId' as which from job_event e where e.kind = 'payment-recorded'
     and not exists (select 1 from payment p where p.id = e.data->>'paymentId')`,
  ],
  [
    'the customer is written to about a booking, a claim, a parcel and a dispatch',
    `select e.kind || ' of ' || j.number as which from job_event e join job j on j.id = e."jobId"
     where ${NOT_ERASED} and (
       (e.kind = 'booked' and j.kind = 'repair' and e.data->>'isWalkIn' is null and not ${mailOf('job-booked')})
       or (e.kind = 'claim-opened' and not ${mailOf('claim-opened')})
       or (e.kind = 'parcel-reminded' and not ${mailOf('parcel-awaited')})
       or (e.kind = 'unit-arrived' and not ${mailOf('unit-arrived')} and not ${IS_OF_BOOKING})
       or (e.kind = 'arrival-undone' and not ${mailOf('arrival-undone')})
       or (e.kind = 'dispatch-undone' and not ${mailOf('dispatch-undone')})
       or (e.kind = 'parcel-sought' and not ${mailOf('parcel-sought')})
       or (e.kind = 'search-ended' and not ${mailOf('search-ended')})
       or (e.kind = 'came-back' and not ${mailOf('parcel-came-back')})
       or (e.kind = 'sent-back' and not ${mailOf('unit-sent-back')}))`,
  ],
  [
    'a message that waits has its place in the queue',
    `select m.id as which from mail m where m.state in ('queued', 'sending') and not exists
       (select 1 from pgboss.job b where b.name = 'mail' and b.id::text = m.id and b.state <= 'active')`,
  ],
  [
    'what is in the queue is a message',
    `select b.id::text as which from pgboss.job b where b.name = 'mail' and b.state <= 'active'
     and not exists (select 1 from mail m where m.id = b.id::text)`,
  ],
];
