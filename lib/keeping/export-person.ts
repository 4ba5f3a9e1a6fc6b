import { type Zippable, zipSync } from 'fflate';
import { dayInZone } from '@/lib/calendar/day';
import { formatInstant } from '@/lib/calendar/format';
import { hasFile, readFile } from '@/lib/files/store';
import { readWholeInvoice, type WholeInvoice } from '@/lib/invoices/records';
import type { ByStaff } from '@/lib/jobs/actor';
import { Refusal } from '@/lib/outcome';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { gather, invoicePath } from './gather';
import { findPerson } from './records';
import { noteSeenWhole } from './seen';

export type Exported = { name: string; bytes: Uint8Array };

/**
 * A copy of everything known of the person behind a job or quote, as a ZIP: one JSON file that programs can read, every
 * photo and paper as a file, and a note in plain words (GDPR Articles 15(3) and 20(1)). Only the owner hands it out, and
 * that it was handed out is kept. `paperOf` draws an invoice that nobody has asked for yet.
 */
export async function exportPerson(
  o: ByStaff & { number: string; paperOf: (invoice: WholeInvoice) => Promise<Uint8Array> },
): Promise<Exported> {
  if (o.actor.kind !== 'owner') throw new Refusal('not-allowed', 'Only the owner hands data out.');
  const person = await findPerson(o.number);
  if (!person) throw new Refusal('not-found', 'There is nobody behind this number.');
  if (person.email === '') throw new Refusal('conflict', 'The data of this person was removed.');
  const workshop = await readWorkshop();
  const { told, files, invoices } = await gather(person);
  const parts: Zippable = {};
  const missing: string[] = [];
  for (const { path, fileKey } of files) {
    // A restore without its files leaves rows behind; the copy says so instead of failing.
    if (await hasFile(fileKey)) parts[path] = [await readFile(fileKey), { level: 0 }];
    else missing.push(path);
  }
  for (const number of invoices) {
    const whole = await readWholeInvoice(number);
    if (whole) parts[invoicePath(number)] = [await o.paperOf(whole), { level: 0 }];
  }
  const data = { exportedAt: o.now, from: workshop.name, about: person.email, ...told, missing };
  parts['data.json'] = text(JSON.stringify(data, null, 2));
  parts['read-me.txt'] = text(readMe(person.email, workshop, o.now));
  // ZIP keeps local times; what is exported at one instant is the same file wherever it is made.
  const mtime = new Date(o.now.getTime() + o.now.getTimezoneOffset() * 60_000);
  const bytes = zipSync(parts, { mtime });
  await noteSeenWhole({ userId: o.actor.id, what: 'exported', email: person.email, now: o.now }, person);
  return { name: `data-${dayInZone(o.now, workshop.timeZone)}.zip`, bytes };
}

function text(content: string): Uint8Array {
  return new TextEncoder().encode(content);
}

function readMe(email: string, workshop: WorkshopCard, now: Date): string {
  const when = formatInstant(now, { locale: workshop.locale, zone: workshop.timeZone });
  return [
    `What ${workshop.name} keeps about ${email}, as of ${when}.`,
    '',
    'data.json    everything in one file: contacts, jobs, prices, payments, messages, mails, certificates, claims',
    'jobs/        photos and certificates, one folder for each job',
    'quotes/      photos sent with requests for a price',
    'invoices/    invoices and credit notes',
    '',
    'Amounts are whole numbers of the smallest unit of the currency: 8900 with GBP is £89.00.',
    'Times are in UTC (ISO 8601).',
    `Something wrong or missing? Write to ${workshop.email || workshop.name}.`,
    '',
  ].join('\n');
}
