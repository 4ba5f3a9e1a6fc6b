/** `npm run migration:new -- NAME` writes the SQL that leads from the existing migrations to today's schema. */
import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { pg_trgm } from '@electric-sql/pglite/contrib/pg_trgm';
import { PGLiteSocketServer } from '@electric-sql/pglite-socket';
import { migrationsFolder, noFilters, openSchemaEngine, readMigrations, readSchema } from '../db/engine';

const name = process.argv[2];
if (!name || !/^[a-z][a-z0-9_]*$/.test(name)) {
  console.error(
    'Say what the migration does: npm run migration:new -- add_parcels (lower case, digits and _)',
  );
  process.exit(1);
}

const shadow = await PGlite.create({ extensions: { pg_trgm } });
const server = new PGLiteSocketServer({ db: shadow, port: 0, maxConnections: 10 });
await server.start();
const engine = await openSchemaEngine(`postgresql://postgres@${server.getServerConn()}/postgres`);
const { stdout } = await engine.diff({
  from: { tag: 'migrations', ...(await readMigrations()) },
  to: { tag: 'schemaDatamodel', files: await readSchema() },
  script: true,
  exitCode: null,
  filters: noFilters,
});
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
process.exit(0);
