import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';

/** Schemas of lib that a form or an address is read by; those of app stand in files named schema.ts, *-schema.ts or narrowing.ts. */
const OF_LIB = [
  'lib/jobs/rules/address.ts',
  'lib/jobs/rules/booking.ts',
  'lib/people/staff-input.ts',
  'lib/quotes/rules/request-answers.ts',
  'lib/workshop/customs-input.ts',
  'lib/workshop/keeping-input.ts',
  'lib/workshop/money-input.ts',
  'lib/workshop/settings-input.ts',
];
/** Read back from the database, by nothing that is sent. */
const STORED = ['draftAnswers'];

const appFiles = readdirSync('app', { recursive: true, encoding: 'utf8' })
  .map((name) => path.join('app', name))
  .filter((name) => /\.tsx?$/.test(name))
  .sort();

export const schemaFiles = [
  ...appFiles.filter((name) => /(^|[/-])schema\.ts$|\/narrowing\.ts$/.test(name)),
  ...OF_LIB,
];

export const appSources = appFiles.map((file) => ({ file, text: readFileSync(file, 'utf8') }));

/** Every schema that something sent is read by, by its file and name; one that needs the currency is made for GBP. */
export async function edgeSchemas(): Promise<Map<string, z.ZodType>> {
  const found = new Map<string, z.ZodType>();
  for (const file of schemaFiles) {
    const exported: Record<string, unknown> = await import(path.resolve(file));
    for (const [name, value] of Object.entries(exported)) {
      const made = typeof value === 'function' && /Schema$/.test(name) ? value('GBP') : value;
      if (made instanceof z.ZodType && !STORED.includes(name)) found.set(`${file} ${name}`, made);
    }
  }
  return found;
}
