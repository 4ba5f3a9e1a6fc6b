import { createHash } from 'node:crypto';
import { chmod, mkdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { pg_trgm } from '@electric-sql/pglite/contrib/pg_trgm';
import { WireServer } from './embedded-wire';

export type Embedded = { url: string; stop: () => Promise<void> };

/**
 * Opens the database that lives in `<dataDir>/database` and serves it on a unix socket in a folder only this user can
 * enter. The caller holds the lock of the folder: two processes on one PGlite folder lose each other's rows.
 */
export async function startEmbedded(dataDir: string): Promise<Embedded> {
  const files = path.join(dataDir, 'database');
  await mkdir(files, { recursive: true, mode: 0o700 });
  const socketFolder = socketFolderOf(dataDir);
  await mkdir(socketFolder, { recursive: true, mode: 0o700 });
  await chmod(socketFolder, 0o700);
  const socket = socketPathOf(dataDir);
  const database = await PGlite.create({ dataDir: files, extensions: { pg_trgm } });
  const wire = new WireServer(database);
  await rm(socket, { force: true });
  await wire.listen(socket);
  return {
    url: embeddedUrl(dataDir),
    async stop() {
      await wire.stop();
      await database.close();
    },
  };
}

export function embeddedUrl(dataDir: string): string {
  return `postgresql://postgres@localhost/postgres?host=${encodeURIComponent(socketFolderOf(dataDir))}`;
}

export function socketPathOf(dataDir: string): string {
  return path.join(socketFolderOf(dataDir), socketName);
}

const socketName = '.s.PGSQL.5432';

// sun_path holds 108 bytes on Linux and 104 on macOS (unix(7), unix(4)), the final zero included.
const longestPath = 103;

function socketFolderOf(dataDir: string): string {
  const folder = path.join(path.resolve(dataDir), 'socket');
  if (Buffer.byteLength(path.join(folder, socketName)) <= longestPath) return folder;
  const mark = createHash('sha256').update(folder).digest('hex').slice(0, 16);
  return path.join(tmpdir(), `mendpost-${process.getuid?.() ?? 0}-${mark}`);
}
