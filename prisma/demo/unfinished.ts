import { db } from '@/lib/db/client';
import { type Tx, transaction } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import { mailQueue } from '@/lib/mail/boss';
import { isWorkshopSetUp } from '@/lib/workshop/records';
import { DEMO_STAFF } from './staff';

/*
 * Filling the demonstration takes many transactions, and somebody may stop the first start half way. A mark stands from
 * the first row to the last; a start that finds it clears what is there and begins again. The app runs only after the
 * mark is gone, so nothing that a person wrote is ever under it.
 */

const MARK = 'demonstration-unfinished';
// The sign-in library deletes outdated rows of this table.
const FAR_AHEAD = new Date('9999-01-01T00:00:00Z');

export async function setMark(tx: Tx): Promise<void> {
  await tx.verification.create({ data: { id: MARK, identifier: MARK, value: '', expiresAt: FAR_AHEAD } });
}

export async function removeMark(tx: Tx): Promise<void> {
  await tx.verification.deleteMany({ where: { id: MARK } });
}

export async function isUnfinished(): Promise<boolean> {
  return (await db.verification.count({ where: { id: MARK } })) > 0;
}

/** True for a database without a workshop, and for one whose demonstration was broken off. */
export async function isDemoWanted(): Promise<boolean> {
  return !(await isWorkshopSetUp()) || (await isUnfinished());
}

/** Removes what a broken-off start has left: its rows, its mail, its files and its staff, but not the owner. */
export async function clearUnfinished(): Promise<void> {
  const photos = await db.photo.findMany({ select: { fileKey: true, thumbKey: true } });
  const certificates = await db.certificate.findMany({ select: { fileKey: true } });
  await transaction(async (tx) => {
    await tx.$executeRaw`
      TRUNCATE "workshop", "closing_day", "carrier", "family", "policy", "part", "customer", "booking_draft", "mail",
        "held_interval", "terms_text" CASCADE`;
    await tx.$executeRaw`DELETE FROM pgboss.job WHERE name = ${mailQueue}`;
    await tx.user.deleteMany({ where: { email: { in: DEMO_STAFF.map((person) => person.email) } } });
    await removeMark(tx);
  });
  const keys = [
    ...photos.flatMap((photo) => [photo.fileKey, photo.thumbKey]),
    ...certificates.map((each) => each.fileKey),
  ];
  for (const key of keys) await deleteFile(key);
}
