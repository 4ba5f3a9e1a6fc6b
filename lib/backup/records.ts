import { readdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { readWorkshop } from '@/lib/workshop/records';
import { type BackupName, readName } from './rules/names';
import { dueTimes, type Night, type Standing, standingOf } from './rules/night';

export type KeptBackup = BackupName & { size: number };

/** The backups in the folder of backups, newest first; none where there is no folder or it cannot be read. */
export async function listBackups(): Promise<KeptBackup[]> {
  const { folder } = config.backups;
  // What keeps the folder from being read keeps backups from being made too, and that is told.
  const files = await readdir(folder).catch(() => []);
  const kept: KeptBackup[] = [];
  for (const file of files) {
    const name = readName(file);
    // Another process may remove an old one in this moment.
    const found = name && (await stat(path.join(folder, file)).catch(() => null));
    if (name && found) kept.push({ ...name, size: found.size });
  }
  return kept.sort((a, b) => b.madeAt.getTime() - a.madeAt.getTime());
}

/** When backups are made by night; null when the setting turns them off. */
export async function readNight(): Promise<Night | null> {
  const { at } = config.backups;
  return at === undefined ? null : { at, zone: (await readWorkshop()).timeZone };
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
export async function viewBackups(now: Date): Promise<BackupsView> {
  const { folder, keep } = config.backups;
  const backups = await listBackups();
  const night = await readNight();
  const hasDataHere = config.isEmbedded || config.files.kind === 'folder';
  const isBesideData = hasDataHere && !path.relative(config.dataDir, folder).startsWith('..');
  const nightly = night && {
    at: night.at,
    next: dueTimes(now, night).next,
    standing: standingOf({
      now,
      made: backups.filter(({ isNightly }) => isNightly).map(({ madeAt }) => madeAt),
      night,
      openedAt: await openedAt(),
    }),
  };
  return { folder, isBesideData, backups, nightly, keep };
}

/** When the first person of the workshop got an account. */
async function openedAt(): Promise<Date | null> {
  const { _min } = await db.user.aggregate({ _min: { createdAt: true } });
  return _min.createdAt;
}
