import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import path from 'node:path';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import type { MigrationList, SchemaContainer, SchemaEngine } from '@prisma/schema-engine-wasm';
import * as glue from '@prisma/schema-engine-wasm/schema_engine_bg';
import { SchemaEngineAdapter } from './engine-adapter';

export const schemaFolder = path.resolve('prisma/schema');
export const migrationsFolder = path.resolve('prisma/migrations');
export const noFilters = { externalTables: [], externalEnums: [] };

/**
 * Prisma's own migration engine as WebAssembly: the checks and the `_prisma_migrations` table of its command line,
 * without the native binary that command line downloads.
 */
export async function withSchemaEngine<T>(
  connectionString: string,
  work: (engine: SchemaEngine) => Promise<T>,
): Promise<T> {
  await loadWebAssembly();
  const datamodels = (await readSchema()).map(({ path, content }): [string, string] => [path, content]);
  const adapter = new SchemaEngineAdapter({ connectionString });
  try {
    const bound = bindMigrationAwareSqlAdapterFactory(adapter);
    return await work(await glue.SchemaEngine.new({ datamodels }, () => {}, bound));
  } finally {
    await adapter.close();
  }
}

export async function readSchema(): Promise<SchemaContainer[]> {
  const names = (await readdir(schemaFolder)).filter((name) => name.endsWith('.prisma')).sort();
  return Promise.all(
    names.map(async (name) => {
      const file = path.join(schemaFolder, name);
      return { path: file, content: await readFile(file, 'utf8') };
    }),
  );
}

export async function readMigrations(): Promise<MigrationList> {
  const entries = await readdir(migrationsFolder, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  return {
    baseDir: migrationsFolder,
    lockfile: { path: 'migration_lock.toml', content: 'provider = "postgresql"\n' },
    shadowDbInitScript: '',
    migrationDirectories: await Promise.all(
      names.sort().map(async (name) => ({
        path: name,
        migrationFile: {
          path: 'migration.sql',
          content: {
            tag: 'ok' as const,
            value: await readFile(path.join(migrationsFolder, name, 'migration.sql'), 'utf8'),
          },
        },
      })),
    ),
  };
}

let loaded: Promise<void> | undefined;

function loadWebAssembly(): Promise<void> {
  loaded ??= (async () => {
    const file = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
    const bytes = await readFile(file.replace(/\.js$/, '.wasm'));
    const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': gentleGlue() });
    glue.__wbg_set_wasm(instance.exports);
    const start = instance.exports['__wbindgen_start'];
    if (typeof start === 'function') start();
    // The engine reports a panic through this name and would hide the reason behind a TypeError without it.
    Object.assign(globalThis, {
      PRISMA_WASM_PANIC_REGISTRY: { set_message: (message: string) => console.error(message) },
    });
  })();
  return loaded;
}

/** The engine never clears the ten seconds it allows itself for its lock; unreferenced, they keep no process waiting. */
function gentleGlue(): WebAssembly.ModuleImports {
  const imports: WebAssembly.ModuleImports = { ...glue };
  for (const name of Object.keys(imports)) {
    if (!name.startsWith('__wbg_setTimeout_')) continue;
    imports[name] = (work: () => void, milliseconds: number) => setTimeout(work, milliseconds).unref();
  }
  return imports;
}
