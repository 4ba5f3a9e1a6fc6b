import { chmod, mkdir, rm } from 'node:fs/promises';
import { connect } from 'node:net';
import path from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import { pg_trgm } from '@electric-sql/pglite/contrib/pg_trgm';
import { embeddedUrl, socketFolderOf, socketPathOf } from './embedded-place';
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
  // Refused by the system when the folder is another user's, and so nobody can lay a trap in the temporary folder.
  await chmod(socketFolder, 0o700);
  const socket = socketPathOf(dataDir);
  // The lock lives in this machine's memory; a container that shares only the folder is noticed by its socket.
  if (await isAnswering(socket)) throw new Error(`Another process serves the database in ${files}.`);
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

function isAnswering(socketPath: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(socketPath);
    socket.on('error', () => resolve(false));
    socket.on('connect', () => {
      socket.destroy();
      resolve(true);
    });
  });
}
