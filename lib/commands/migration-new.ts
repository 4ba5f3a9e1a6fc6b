/** `npm run migration:new -- NAME` writes the SQL that leads from the existing migrations to today's schema. */
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { startEmbedded } from '@/lib/db/embedded';
import { migrationsFolder, noFilters, readMigrations, readSchema, withSchemaEngine } from '@/lib/db/engine';

const name = process.argv[2];
if (!name || !/^[a-z][a-z0-9_]*$/.test(name)) {
  console.error(
    'Say what the migration does: npm run migration:new -- add_parcels (lower case, digits and _)',
  );
  process.exit(1);
}

const dataDir = await mkdtemp(path.join(tmpdir(), 'mendpost-shadow-'));
const shadow = await startEmbedded(dataDir);
const migrations = await readMigrations();
const files = await readSchema();
const { stdout } = await withSchemaEngine(shadow.url, (engine) =>
  engine.diff({
    from: { tag: 'migrations', ...migrations },
    to: { tag: 'schemaDatamodel', files },
    script: true,
    exitCode: null,
    filters: noFilters,
  }),
);
await shadow.stop();
await rm(dataDir, { recursive: true });

const sql = (stdout ?? '').trim();
if (sql === '' || sql === '-- This is an empty migration.')
  console.log('The migrations already lead to this schema: nothing written.');
else {
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
  const file = path.join(migrationsFolder, `${stamp}_${name}`, 'migration.sql');
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, `${sql}\n`);
  await writeFile(path.join(migrationsFolder, 'migration_lock.toml'), 'provider = "postgresql"\n');
  console.log(`Wrote ${path.relative('.', file)}. Read it before you commit it.`);
}
