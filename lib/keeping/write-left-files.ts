import { instantDaysBefore } from '@/lib/calendar/spans';
import { db } from '@/lib/db/client';
import { deleteFile, filesIn, keptSince } from '@/lib/files/store';
import { limitAttempts } from '@/lib/people/limit-attempts';

/**
 * A file is written seconds before its row. A week leaves time to notice, and put right, a database that was brought back
 * from a backup older than its files: these are then all there is of what was issued since.
 */
const LEFT_DAYS = 7;
/** So many keys are looked up at once. */
const BATCH = 1000;
/** A little less than a day, as the hours of the rounds drift. */
const TURN_SECONDS = 23 * 60 * 60;

const ROWS: Record<string, (keys: string[]) => Promise<string[]>> = {
  certificates: async (keys) => {
    const rows = await db.certificate.findMany({
      where: { fileKey: { in: keys } },
      select: { fileKey: true },
    });
    return rows.map(({ fileKey }) => fileKey);
  },
  invoices: async (keys) => {
    const rows = await db.invoice.findMany({ where: { fileKey: { in: keys } }, select: { fileKey: true } });
    return rows.flatMap(({ fileKey }) => fileKey ?? []);
  },
  photos: async (keys) => {
    const rows = await db.photo.findMany({
      where: { OR: [{ fileKey: { in: keys } }, { thumbKey: { in: keys } }] },
      select: { fileKey: true, thumbKey: true },
    });
    return rows.flatMap(({ fileKey, thumbKey }) => [fileKey, thumbKey]);
  },
};

/** `forgetLeftFiles`, once a day over all processes: it reads the names of all files. */
export async function forgetLeftFilesDaily(now: Date): Promise<number> {
  const turn = await limitAttempts('left-files', { max: 1, windowSeconds: TURN_SECONDS, now });
  return turn.allowed ? forgetLeftFiles(now) : 0;
}

/**
 * Removes certificates, invoices and photos that were written a week ago or more and that no row names: what a process
 * that was killed between the file and its row left behind, or a commit that failed. Returns how many files that were.
 */
export async function forgetLeftFiles(now: Date): Promise<number> {
  const before = instantDaysBefore(now, LEFT_DAYS);
  let forgotten = 0;
  for (const [folder, rowsOf] of Object.entries(ROWS)) {
    const keys = await filesIn(folder);
    for (let at = 0; at < keys.length; at += BATCH) {
      const some = keys.slice(at, at + BATCH);
      const named = new Set(await rowsOf(some));
      for (const key of some) {
        if (named.has(key)) continue;
        const since = await keptSince(key);
        if (!since || since > before) continue;
        await deleteFile(key);
        forgotten += 1;
      }
    }
  }
  return forgotten;
}
