import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const generated = path.resolve('lib/db/generated');
const marker = path.join(generated, 'made-from');

/** After `npm ci --ignore-scripts` there is none, and nothing that imports it can be loaded. */
export function hasClient(): boolean {
  return existsSync(path.join(generated, 'client.ts'));
}

/** Makes the database client from the schema files, unless the one there was made from these very files. */
export function generateClient(): void {
  const mark = hashFolder(path.resolve('prisma/schema'));
  if (existsSync(marker) && readFileSync(marker, 'utf8') === mark) return;
  const run = spawnSync(process.execPath, ['node_modules/prisma/build/index.js', 'generate'], {
    encoding: 'utf8',
  });
  if (run.status !== 0) throw new Error(`The database client could not be made:\n${run.stdout}${run.stderr}`);
  writeFileSync(marker, mark);
}

export function hashFolder(folder: string): string {
  const hash = createHash('sha256');
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    const file = path.join(folder, name);
    if (name.endsWith('.prisma') || name.endsWith('.sql')) hash.update(name).update(readFileSync(file));
  }
  return hash.digest('hex');
}
