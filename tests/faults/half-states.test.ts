import { beforeAll, expect, test } from 'vitest';
import { findHalfStates } from '@/lib/commands/faults/half-states';
import { onServer } from '@/lib/db/server';
import { useDatabase } from '@/tests/database';
import { askForClaim, assessedJob, issuedCertificate } from '@/tests/makers/course';
import { askPrice } from '@/tests/makers/offer';
import { makeWorkshop } from '@/tests/makers/workshop';

useDatabase();
const NOW = new Date('2026-11-25T10:00:00Z');
beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  const number = await issuedCertificate(world, NOW);
  await askForClaim(number, NOW);
  await askPrice(await assessedJob(world, NOW), NOW);
}, 60_000);

/** What is found after a change that no use case makes; the change is undone. Triggers that forbid it are off. */
function found(change: string): Promise<string[]> {
  return onServer(process.env['DATABASE_URL'] ?? '', async (client) => {
    await client.query('begin');
    await client.query("set local session_replication_role = 'replica'");
    await client.query(change);
    const ask = (sql: string) =>
      /^(BEGIN|COMMIT)/.test(sql) ? Promise.resolve({ rows: [] }) : client.query(sql);
    const rules = (await findHalfStates(ask)).map(({ rule }) => rule);
    await client.query('rollback');
    return rules;
  });
}

test('a workshop with a certificate, a claim and an open price has no half states', async () => {
  const all = await onServer(process.env['DATABASE_URL'] ?? '', (client) =>
    findHalfStates((sql) => client.query(sql)),
  );
  expect(all).toEqual([]);
});

test.for([
  [
    'a job that moved without its history',
    `update job set stage = 'closed' where stage = 'sent-back'`,
    'a job stands where its history ends',
  ],
  [
    'a version without an event',
    `update job set version = version + 1`,
    'a job has one event for each of its versions',
  ],
  [
    'a dispatch without its certificate',
    'delete from certificate',
    'a certificate that a dispatch names is there',
  ],
  [
    'a certificate without its dispatch',
    `delete from job_event where kind = 'sent-back'`,
    'a certificate is named by the dispatch that issued it',
  ],
  [
    'a parcel that nobody took and nobody collected',
    `update job set carrier = '' where "sentBackAt" is not null`,
    'a unit left with a carrier and its reference, or its customer collected it',
  ],
  [
    'a second certificate for a parcel that came back',
    `insert into job_event (id, "jobId", version, kind, at, "actorKind", "fromStage", "toStage", data)
       select 'again-' || id, "jobId", version + 1000, kind, at, "actorKind", "fromStage", "toStage", data
       from job_event where kind = 'sent-back' and data->>'certificate' is not null`,
    'a job that went back more than once has one certificate at most',
  ],
  [
    'a certificate without its lines',
    'delete from certificate_line',
    'a certificate ends with its longest line',
  ],
  ['a unit that nobody counts', 'delete from unit_watch', 'a unit counts among returns as its records say'],
  [
    'a cover line that ends elsewhere than its certificate says',
    'update line_watch set "endsOn" = "endsOn" + 1',
    'a cover line counts among returns as its records say',
  ],
  [
    'a missing invoice number',
    'update invoice set sequence = sequence + 1',
    'the numbers of a year run from 1 without a gap',
  ],
  [
    'an invoice without its lines',
    'delete from invoice_line',
    'an invoice is the sum of its lines and taxes',
  ],
  [
    'a ready job without its invoice',
    'delete from invoice',
    'a job that is ready at an agreed price has its invoice',
  ],
  [
    'an arrival without a promise',
    `update job set "promisedOn" = null`,
    'a unit that arrived at an agreed price has its promise',
  ],
  [
    'a payment without its event',
    `delete from job_event where kind = 'payment-recorded'`,
    'a payment is in the history of its job',
  ],
  ['an event without its payment', 'delete from payment', 'a payment that a history names is there'],
  [
    'a booking without its mail',
    `delete from mail where template = 'job-booked'`,
    'the customer is written to about a booking, a claim, a parcel and a dispatch',
  ],
  [
    'a reminder of a parcel without its mail',
    `insert into job_event ("id", "jobId", "version", "kind", "at", "actorKind", "data")
       select gen_random_uuid(), id, 999, 'parcel-reminded', now(), 'clock', '{}' from job`,
    'the customer is written to about a booking, a claim, a parcel and a dispatch',
  ],
  [
    'a mail that nobody will carry',
    'delete from pgboss.job',
    'a message that waits has its place in the queue',
  ],
  ['a place in the queue without a mail', 'delete from mail', 'what is in the queue is a message'],
  ['a job without its link', 'delete from private_link', 'a booked job has its private link'],
] as const)('%s is found', async ([, change, rule]) => {
  expect(await found(change)).toContain(rule);
});
