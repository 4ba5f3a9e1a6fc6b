import type { Tx } from '@/lib/db/transaction';
import { type Actor, actorId } from './actor';

export const PHOTO_PURPOSES = [
  'arrival',
  /** the serial as it stands on the unit: the proof where it is settled which unit came */
  'serial',
  'finding',
  'work',
  'proof',
  'claim',
  'inspection',
  'message',
  'receipt',
] as const;
export type PhotoPurpose = (typeof PHOTO_PURPOSES)[number];

/** A photo already cleaned and stored (lib/files/photos.ts), not yet tied to a job. */
export type NewPhoto = {
  /** from `idOfSent`, where what is sent twice must not be there twice */
  id?: string;
  fileKey: string;
  thumbKey: string;
  sha256: string;
  width: number;
  height: number;
  caption?: string;
};

/** Ties stored photos to a job, inside the caller's transaction, and returns their ids in order. */
export async function writePhotos(
  tx: Tx,
  o: {
    jobId: string;
    purpose: PhotoPurpose;
    photos: readonly NewPhoto[];
    findingId?: string;
    messageId?: string;
    actor: Actor;
    now: Date;
  },
): Promise<string[]> {
  const ids: string[] = [];
  for (const photo of o.photos) {
    const row = await tx.photo.create({
      data: {
        ...(photo.id !== undefined && { id: photo.id }),
        jobId: o.jobId,
        purpose: o.purpose,
        caption: photo.caption ?? '',
        fileKey: photo.fileKey,
        thumbKey: photo.thumbKey,
        sha256: photo.sha256,
        width: photo.width,
        height: photo.height,
        findingId: o.findingId ?? null,
        messageId: o.messageId ?? null,
        at: o.now,
        userId: actorId(o.actor),
      },
      select: { id: true },
    });
    ids.push(row.id);
  }
  return ids;
}
