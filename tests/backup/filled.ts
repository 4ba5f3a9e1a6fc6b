import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { onServer } from '@/lib/db/server';
import { storePhoto } from '@/lib/files/photos';
import { addPhotos } from '@/lib/jobs/add-photo';
import { makeBooking } from '@/tests/makers/job';
import { makeQuote, makeRequest } from '@/tests/makers/quote';
import { makeCertificate, makeClaim } from '@/tests/makers/walk';
import { BENCH, makeWorkshop } from '@/tests/makers/workshop';

export const fileFolder = config.files.kind === 'folder' ? config.files.folder : '';

/** A workshop through its use cases: jobs, a certificate, a claim, quotes, invoices, waiting mail, photos with their files. */
export async function fillWorkshop(now: Date) {
  const world = await makeWorkshop(now);
  const { number, jobId } = await makeCertificate(world, now);
  await makeClaim({ number, now });
  const { quoteId } = await makeRequest({
    now,
    answers: { problem: 'Quote “marks”, \\back\\slashes, a\ttab, {braces}, NULL\nand a second line 🎚️\u2028' },
    photos: [await photo('teal')],
  });
  await makeQuote({ quoteId, repairId: world.repairId, now });
  await makeRequest({ now, answers: { email: 'otto.brandt@example.org', symptoms: [] } });
  const booking = await makeBooking({ repairId: world.repairId, now, serial: 'HW2-20991-B' });
  await addPhotos({
    jobId: booking.jobId,
    photos: [await photo('maroon')],
    purpose: 'arrival',
    actor: BENCH,
    now,
  });
  await db.checkEntry.updateMany({ where: { reading: { not: null } }, data: { reading: 0.1 + 0.2 } });
  await db.model.updateMany({ data: { aliases: ['HW2', 'a,b', '"q"', 'NULL', ''] } });
  return { world, jobId, booking };
}

async function photo(colour: string) {
  const bytes = await sharp({ create: { width: 640, height: 480, channels: 3, background: colour } })
    .png()
    .toBuffer();
  const stored = await storePhoto(bytes);
  if (!stored.ok) throw new Error(stored.reason);
  return stored;
}

/** Number of rows and a hash of each table, by PostgreSQL's own text of a row: it shares no line with what it checks. */
export function rowsOf(url: string): Promise<Record<string, string>> {
  return onServer(url, async (client) => {
    await client.query(`SET timezone = 'UTC'`);
    const { rows: tables } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'`,
    );
    const found: Record<string, string> = {};
    for (const { name } of tables) {
      const { rows } = await client.query<{ row: string }>(`SELECT t::text AS row FROM public."${name}" t`);
      const texts = rows.map(({ row }) => row).sort();
      found[name] = `${rows.length} ${createHash('sha256').update(texts.join('\n')).digest('hex')}`;
    }
    return found;
  });
}

/** What the database itself knows of its tables: references, triggers and whether they are on. */
export function rulesOf(url: string): Promise<string[]> {
  return onServer(url, async (client) => {
    const { rows } = await client.query<{ rule: string }>(
      `SELECT conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid) || convalidated AS rule FROM pg_constraint
         WHERE connamespace = 'public'::regnamespace AND contype = 'f'
       UNION ALL SELECT tgrelid::regclass || ' ' || tgname || ' ' || tgenabled::text FROM pg_trigger WHERE NOT tgisinternal
       ORDER BY 1`,
    );
    return rows.map(({ rule }) => rule);
  });
}

export function filesOf(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((each) =>
    each.isFile(),
  );
  return Object.fromEntries(
    entries
      .map((each) => path.join(each.parentPath, each.name))
      .sort()
      .map((file) => [
        path.relative(folder, file),
        createHash('sha256').update(readFileSync(file)).digest('hex'),
      ]),
  );
}

export function destroyFiles(): void {
  rmSync(fileFolder, { recursive: true, force: true });
}
