import { expect, test } from 'vitest';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { hasFile } from '@/lib/files/store';
import { arrive } from '@/lib/jobs/arrive';
import { ensureFirstOwner } from '@/lib/people/first-owner';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { demoDays } from '@/prisma/demo/days';
import { takePhoto } from '@/prisma/demo/photos';
import { Shop } from '@/prisma/demo/shop';
import { hireStaff } from '@/prisma/demo/staff';
import { Turns } from '@/prisma/demo/turns';
import { clearUnfinished, isDemoWanted, isUnfinished, removeMark, setMark } from '@/prisma/demo/unfinished';
import { writeWorkshop } from '@/prisma/demo/workshop';
import { useDatabase } from '@/tests/database';

// Photos of the demonstration are drawn once in a process and copied from its store from then on.
useDatabase();

const now = new Date('2026-11-25T10:30:00Z');

test('a first start that was broken off half way is cleared, but for the owner', async () => {
  await ensureFirstOwner();
  expect(await isDemoWanted()).toBe(true);
  await transaction(async (tx) => {
    await setMark(tx);
    await writeWorkshop(tx, now);
    await loadCatalogue(tx, now);
  });
  const shop = new Shop(demoDays(now), await hireStaff(), new Turns());
  const job = await shop.book('half-way', {
    repair: 'cockle/power-socket',
    customer: 'maren-holt',
    serial: 'OC-1000',
    problem: 'No light.',
    at: shop.ago(9, '10:00'),
  });
  const photo = await takePhoto(['unit', 'As it came'], 'half-way');
  await arrive({
    jobId: job.jobId,
    version: 1,
    serial: 'OC-1000',
    arrived: [],
    extra: [],
    photos: [photo],
    actor: shop.hands.front,
    now: shop.ago(7, '10:00'),
  });
  expect(await hasFile(photo.fileKey)).toBe(true);
  expect([await isUnfinished(), await isDemoWanted()]).toEqual([true, true]);

  await clearUnfinished();

  expect([await isUnfinished(), await isDemoWanted()]).toEqual([false, true]);
  for (const count of [
    db.workshop.count(),
    db.repair.count(),
    db.lot.count(),
    db.job.count(),
    db.mail.count(),
    db.bookingDraft.count(),
    db.policyVersion.count(),
  ]) {
    expect(await count).toBe(0);
  }
  expect((await db.user.findMany()).map((user) => user.role)).toEqual(['owner']);
  const waiting = await db.$queryRaw<{ n: number }[]>`select count(*)::int as n from pgboss.job`;
  expect(waiting).toEqual([{ n: 0 }]);
  expect(await hasFile(photo.fileKey)).toBe(false);
  expect(await hasFile(photo.thumbKey)).toBe(false);
}, 60_000);

test('a workshop that was filled to the end is left alone', async () => {
  await transaction(async (tx) => {
    await setMark(tx);
    await writeWorkshop(tx, now);
  });
  expect(await isDemoWanted()).toBe(true);
  await transaction(removeMark);
  expect(await isDemoWanted()).toBe(false);
});
