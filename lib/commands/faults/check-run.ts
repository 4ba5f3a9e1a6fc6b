import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Client } from 'pg';
import { findHalfStates } from './half-states';
import type { Acknowledged } from './journal';

export type Found = { problems: string[]; facts: Record<string, number> };

/** Everything acknowledged is there, and nothing is there by half. Holds at any moment, also right after a kill. */
export async function checkRows(url: string, acknowledged: readonly Acknowledged[]): Promise<string[]> {
  return asking(url, async (client) => {
    const problems = (await findHalfStates((sql) => client.query(sql))).map(
      ({ rule, which }) => `half state: ${rule}: ${which.slice(0, 5).join(', ')} (${which.length})`,
    );
    const rows = await keysOf(client);
    for (const line of acknowledged) {
      for (const key of keysIn(line)) if (!rows.has(key)) problems.push(`lost: ${line.step}: ${key}`);
    }
    return problems;
  });
}

/** What an acknowledgement promises, as keys of rows. */
function keysIn({ jobId, number, version, kind, mail, certificate, invoice }: Acknowledged): string[] {
  return [
    ...(jobId && number ? [`job ${jobId} ${number}`] : []),
    ...(jobId && version && kind ? [`event ${jobId} ${version} ${kind}`] : []),
    ...(jobId && mail ? [`mail ${jobId} ${mail}`] : []),
    ...(jobId && certificate ? [`certificate ${jobId} ${certificate}`] : []),
    ...(invoice ? [`invoice ${invoice}`] : []),
  ];
}

async function keysOf(client: Client): Promise<Set<string>> {
  const { rows } = await client.query<{ key: string }>(`
    select 'job ' || id || ' ' || number as key from job
    union all select 'event ' || "jobId" || ' ' || version || ' ' || kind from job_event
    union all select 'mail ' || "jobId" || ' ' || template from mail where "jobId" is not null
    union all select 'certificate ' || "jobId" || ' ' || number from certificate
    union all select 'invoice ' || number from invoice`);
  return new Set(rows.map(({ key }) => key));
}

/** At the end: each message left, each certificate's and invoice's file is the one that was issued, each was issued once. */
export async function checkEnd(o: {
  url: string;
  files: string;
  acknowledged: readonly Acknowledged[];
  received: ReadonlyMap<string, number>;
}): Promise<Found> {
  return asking(o.url, async (client) => {
    const problems: string[] = [];
    const { rows: mails } = await client.query<{ messageId: string; state: string }>(
      'select "messageId", state from mail',
    );
    for (const { messageId, state } of mails) {
      if (!o.received.has(messageId)) problems.push(`mail ${messageId} (${state}) never left`);
    }
    const { rows: files } = await client.query<{ number: string; fileKey: string; sha256: string }>(`
      select number, "fileKey", sha256 from certificate
      union all select number, "fileKey", sha256 from invoice where "fileKey" is not null`);
    for (const { number, fileKey, sha256 } of files) {
      const place = path.join(o.files, fileKey);
      if (!existsSync(place)) problems.push(`the file of ${number} is lost`);
      else if (sumOf(place) !== sha256) problems.push(`the file of ${number} is not the one that was issued`);
    }
    const told = new Map(files.map(({ number, sha256 }) => [number, sha256]));
    for (const { step, invoice, sha256 } of o.acknowledged) {
      if (step === 'paper' && told.get(invoice ?? '') !== sha256)
        problems.push(`invoice ${invoice} was handed out as another file`);
    }
    const { rows: twice } = await client.query<{ number: string }>(`
      select j.number from job j left join certificate c on c."jobId" = j.id left join invoice i on i."jobId" = j.id
      where j.stage = 'sent-back' group by j.id having count(distinct c.id) <> 1 or count(distinct i.id) <> 1`);
    for (const { number } of twice) problems.push(`job ${number} has not one certificate and one invoice`);
    const { rows: dispatched } = await client.query(`select 1 from job where stage = 'sent-back'`);
    return {
      problems,
      facts: {
        dispatched: dispatched.length,
        mails: mails.length,
        mailsTwice: [...o.received.values()].filter((times) => times > 1).length,
        filesWithoutRow: filesUnder(o.files) - files.length,
      },
    };
  });
}

function sumOf(place: string): string {
  return createHash('sha256').update(readFileSync(place)).digest('hex');
}

function filesUnder(folder: string): number {
  if (!existsSync(folder)) return 0;
  return readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) => each.isFile()).length;
}

export async function asking<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  client.on('error', () => {});
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}
