import { rm } from 'node:fs/promises';
import { checkBackup } from './check-backup';
import type { FilePlace } from './file-place';
import { makeBackup } from './make-backup';
import { type Restored, restoreBackup } from './restore-backup';

/**
 * Takes a workshop from one database to an empty other one: a backup into `draft`, restored there, every table compared by the hash
 * of its rows. With `files` photos and papers are copied from one store to the other and read back; without, they stay where they are.
 * The first database and store are only read. The app must not run, or what it writes meanwhile stays behind.
 */
export async function moveWorkshop(o: {
  from: string;
  to: string;
  files: { from: FilePlace; to: FilePlace } | null;
  secret: string;
  draft: string;
  now: Date;
}): Promise<Restored> {
  const { secret, draft: file, now } = o;
  try {
    const given = { file, secret, hasSecret: false, files: o.files?.from ?? null, now };
    await makeBackup({ ...given, databaseUrl: o.from });
    const checked = await checkBackup(file);
    return await restoreBackup({ file, databaseUrl: o.to, files: o.files?.to ?? null, checked });
  } finally {
    await rm(file, { force: true });
  }
}
