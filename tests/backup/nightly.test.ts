import { existsSync, mkdirSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { checkBackup } from '@/lib/backup/check-backup';
import { backupByNight } from '@/lib/backup/nightly';
import { viewBackups } from '@/lib/backup/records';
import { nameOf } from '@/lib/backup/rules/names';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import { useDatabase } from '@/tests/database';
import { makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';
import { allowConsole } from '@/tests/silence';

useDatabase();

const { folder } = config.backups;
const day = (n: number, time = '03:04:00') => new Date(`2026-11-${String(n).padStart(2, '0')}T${time}Z`);
const names = () => (existsSync(folder) ? readdirSync(folder).sort() : []);

let jobId = '';
beforeAll(async () => {
  const { repairId } = await makeWorkshop(day(1));
  ({ jobId } = await makeBooking({ repairId, now: day(1) }));
}, 30_000);
beforeEach(async () => {
  config.backups.at = '03:00';
  rmSync(folder, { recursive: true, force: true });
  await db.attempt.deleteMany();
});

test('one is made each night, not before its hour and not twice', async () => {
  expect(await backupByNight(day(10))).toBe(true);
  expect(await backupByNight(day(10, '03:14:00'))).toBe(false);
  expect(await backupByNight(day(11, '02:50:00'))).toBe(false);
  expect(await backupByNight(day(11))).toBe(true);
  expect(names()).toEqual([nameOf(day(10), true), nameOf(day(11), true)]);
  expect((await checkBackup(path.join(folder, nameOf(day(11), true)))).manifest.madeAt).toBe(
    day(11).toISOString(),
  );
});

test('a file that is gone from the store is told beside the backup', async () => {
  allowConsole();
  const photo = {
    purpose: 'work',
    fileKey: 'gone/a',
    thumbKey: 'gone/b',
    sha256: '0'.repeat(64),
    width: 1,
    height: 1,
  };
  await db.photo.create({ data: { ...photo, jobId, at: day(9) } });
  expect(await backupByNight(day(10))).toBe(true);
  await db.photo.deleteMany();
  expect((await viewBackups(day(10, '07:00:00'))).backups).toMatchObject([{ lacking: 2 }]);
  expect(await backupByNight(day(11))).toBe(true);
  expect((await viewBackups(day(11, '07:00:00'))).backups).toMatchObject([{ lacking: 0 }, { lacking: 2 }]);
});

test('of several processes that look at once one makes it', async () => {
  const made = await Promise.all([1, 2, 3, 4].map(() => backupByNight(day(10))));
  expect(made.filter(Boolean)).toHaveLength(1);
  expect(names()).toHaveLength(1);
});

test('a process that does not see the folder of the other makes none for the same night', async () => {
  expect(await backupByNight(day(10))).toBe(true);
  rmSync(folder, { recursive: true });
  expect(await backupByNight(day(10, '06:00:00'))).toBe(false);
  expect(await backupByNight(day(11))).toBe(true);
});

test('a failure is tried again an hour later, and told meanwhile', async () => {
  // A file where the folder should be: nothing can be written.
  writeFileSync(folder, 'in the way');
  await expect(backupByNight(day(10))).rejects.toThrow();
  rmSync(folder);
  expect(await backupByNight(day(10, '03:14:00'))).toBe(false);
  await db.user.updateMany({ data: { createdAt: day(1) } });
  expect((await viewBackups(day(10, '07:00:00'))).nightly?.standing).toBe('missed');
  expect(await backupByNight(day(10, '07:05:00'))).toBe(true);
  expect((await viewBackups(day(10, '07:10:00'))).nightly?.standing).toBe('fine');
});

test('a clock that ran a year ahead and was set right holds nothing up', async () => {
  expect(await backupByNight(new Date('2027-11-10T03:04:00Z'))).toBe(true);
  expect(await backupByNight(day(10))).toBe(true);
});

test('old ones go by the rule; those made by hand, other files and young drafts stay', async () => {
  mkdirSync(folder, { recursive: true });
  const draft = `${nameOf(day(2), true)}.part`;
  const young = `${nameOf(day(3), true)}.part`;
  const kept = [nameOf(day(1), false), 'notes.txt', young];
  for (const name of [...kept, draft]) writeFileSync(path.join(folder, name), '');
  utimesSync(path.join(folder, draft), day(2), day(2));
  utimesSync(path.join(folder, young), day(20), day(20));
  for (let n = 9; n <= 20; n += 1) expect(await backupByNight(day(n))).toBe(true);
  // Seven days; their Sunday is the newest of its week, and the last night that of this week and month.
  const nights = [14, 15, 16, 17, 18, 19, 20].map((n) => nameOf(day(n), true));
  expect(names()).toEqual([...kept, ...nights].sort());
});

test('turned off, none is made and none is missed', async () => {
  config.backups.at = undefined;
  expect(await backupByNight(day(10))).toBe(false);
  expect((await viewBackups(day(10))).nightly).toBeNull();
});
