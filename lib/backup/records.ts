import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { readWorkshop } from '@/lib/workshop/records';
import { type BackupName, lackingOf, readName } from './rules/names';
import { dueTimes, type Night, type Standing, standingOf } from './rules/night';

export type KeptBackup = BackupName & {
  size: number /** files of the store that it does not hold */;
  lacking: number;
};

/** The backups in the folder of backups, newest first; none where there is no folder or it cannot be read. */
export async function listBackups(): Promise<KeptBackup[]> {
  const { folder } = config.backups;
  // What keeps the folder from being read keeps backups from being made too, and that is told.
  const files = await readdir(folder).catch((): string[] => []);
  const kept: KeptBackup[] = [];
  for (const file of files) {
    const name = readName(file);
    // Another process may remove an old one in this moment.
    const found = name && (await stat(path.join(folder, file)).catch(() => null));
    if (name && found)
      kept.push({
        ...name,
        size: found.size,
        lacking: files.includes(lackingOf(file)) ? await countLines(lackingOf(file)) : 0,
      });
  }
  return kept.sort((a, b) => b.madeAt.getTime() - a.madeAt.getTime());
}

async function countLines(file: string): Promise<number> {
  const text = await readFile(path.join(config.backups.folder, file), 'utf8').catch(() => '');
  return text.split('\n').filter(Boolean).length;
}

/** When backups are made by night; null when the setting turns them off. `zone` is the workshop's, where it is known. */
export async function readNight(zone?: string): Promise<Night | null> {
  const { at } = config.backups;
  return at === undefined ? null : { at, zone: zone ?? (await readWorkshop()).timeZone };
}

export type BackupsView = {
  folder: string;
  /** true when what is saved lies in the data folder and so does the folder of backups */
  isBesideData: boolean;
  /** newest first, made by night and by hand */
  backups: KeptBackup[];
  nightly: { at: string; next: Date; standing: Standing } | null;
  keep: { days: number; weeks: number; months: number };
};

/** What the owner is shown of backups: those there are, the next, and whether one was missed. */
export async function viewBackups(now: Date, zone?: string): Promise<BackupsView> {
  const { folder, keep } = config.backups;
  const backups = await listBackups();
  const night = await readNight(zone);
  const hasDataHere = config.isEmbedded || config.files.kind === 'folder';
  const isBesideData = hasDataHere && !path.relative(config.dataDir, folder).startsWith('..');
  const nightly = night && {
    at: night.at,
    next: dueTimes(now, night).next,
    standing: await standing(now, backups, night),
  };
  return { folder, isBesideData, backups, nightly, keep };
}

/** Only where one is missing does it matter how long the workshop is open. */
async function standing(now: Date, backups: readonly KeptBackup[], night: Night): Promise<Standing> {
  const made = backups.filter(({ isNightly }) => isNightly).map(({ madeAt }) => madeAt);
  const of = (openedAt: Date | null) => standingOf({ now, made, night, openedAt });
  const isFine = of(null) === 'fine';
  return isFine ? 'fine' : of(await openedAt());
}

/** When the first person of the workshop got an account. */
async function openedAt(): Promise<Date | null> {
  const { _min } = await db.user.aggregate({ _min: { createdAt: true } });
  return _min.createdAt;
}
