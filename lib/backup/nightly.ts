import { readdir, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { DAY_MS } from '@/lib/calendar/spans';
import { now } from '@/lib/clock';
import { authSecret, config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { log } from '@/lib/log';
import { limitAttempts } from '@/lib/people/limit-attempts';
import { openPlace } from './file-place';
import { makeBackup } from './make-backup';
import { listBackups, readNight } from './records';
import { outdated } from './rules/keep';
import { lackingOf, nameOf, readName } from './rules/names';
import { dueTimes, isDue, type Night } from './rules/night';
import { isSecretKept } from './secret';

const TEN_MINUTES = 600_000;
/** Another try after a failure, and another process on the same database, wait so long. */
const TURN = 'backup-by-night';
const TURN_SECONDS = 55 * 60;

/**
 * Looks every ten minutes whether the backup of the night is due; `stop` begins no more and waits for the one under way. A clock
 * that a test sets by hand makes none.
 */
export function startNightly(): { stop: () => Promise<void> } {
  let underWay: Promise<void> = Promise.resolve();
  if (config.clockFile || config.backups.at === undefined) return { stop: () => underWay };
  let isBusy = false;
  const look = () => {
    if (isBusy) return;
    isBusy = true;
    underWay = backupByNight(now())
      .then(() => {})
      .catch((error: unknown) => log.error('backup-failed', {}, error))
      .finally(() => {
        isBusy = false;
      });
  };
  const timer = setInterval(look, TEN_MINUTES).unref();
  return {
    stop() {
      clearInterval(timer);
      return underWay;
    },
  };
}

/**
 * Makes the backup of the night when it is due, and removes the nightly ones that are kept no longer. Of several processes on
 * one database one makes it, whether or not they share the folder; when it fails there is another try an hour later. Backups
 * made by hand are never removed. Returns whether one was made.
 */
export async function backupByNight(at: Date): Promise<boolean> {
  const night = await readNight();
  if (!night || !isDue(at, await nightsMade(), night)) return false;
  if (!(await takeTurn(at, dueTimes(at, night).last))) return false;
  const began = performance.now();
  await removeDrafts(at);
  const file = path.join(config.backups.folder, nameOf(at, true));
  const made = await makeBackup({
    file,
    databaseUrl: config.databaseUrl,
    secret: authSecret(),
    hasSecret: isSecretKept(),
    files: await openPlace(config.files),
    now: at,
  });
  log.info('backup-made', { ms: Math.round(performance.now() - began), count: made.rows });
  if (made.missing.length > 0) log.warn('backup-file-missing', { count: made.missing.length });
  if (made.changed.length > 0) log.warn('backup-file-changed', { count: made.changed.length });
  const lacking = [...made.missing, ...made.changed];
  if (lacking.length > 0) await writeFile(lackingOf(file), `${lacking.join('\n')}\n`);
  await limitAttempts(markOf(dueTimes(at, night).last), { max: 1, windowSeconds: DAY_MS / 1000, now: at });
  await removeOutdated(at, night);
  return true;
}

/** Whoever counts first has the turn; nobody has it once the night's backup was made, on whichever machine. */
async function takeTurn(at: Date, due: Date): Promise<boolean> {
  if ((await db.attempt.count({ where: { key: markOf(due) } })) > 0) return false;
  return (await limitAttempts(TURN, { max: 1, windowSeconds: TURN_SECONDS, now: at })).allowed;
}

function markOf(due: Date): string {
  return `backup-made-${due.toISOString()}`;
}

async function nightsMade(): Promise<Date[]> {
  return (await listBackups()).filter(({ isNightly }) => isNightly).map(({ madeAt }) => madeAt);
}

async function removeOutdated(at: Date, night: Night): Promise<void> {
  const old = outdated(await nightsMade(), config.backups.keep, { zone: night.zone, now: at });
  for (const madeAt of old) {
    const file = path.join(config.backups.folder, nameOf(madeAt, true));
    await rm(file, { force: true });
    await rm(lackingOf(file), { force: true });
  }
}

/** What a process that was killed half way left behind, a day later. */
async function removeDrafts(at: Date): Promise<void> {
  const { folder } = config.backups;
  for (const file of await readdir(folder).catch(() => [])) {
    if (!file.endsWith('.part') || !readName(file.slice(0, -'.part'.length))) continue;
    const { mtime } = await stat(path.join(folder, file));
    if (at.getTime() - mtime.getTime() > DAY_MS) await rm(path.join(folder, file), { force: true });
  }
}
