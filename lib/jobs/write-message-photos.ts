import type { Tx } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { Actor } from './actor';
import { MOST_PHOTOS_OF_MESSAGES } from './rules/most-photos';
import { type NewPhoto, writePhotos } from './write-photos';

/**
 * Ties stored photos to a message about a job, inside the caller's transaction, which has locked the job; refuses one too many. A
 * photo that an earlier message brought along already is not written twice. Gives how many were.
 */
export async function writeMessagePhotos(
  tx: Tx,
  o: { jobId: string; messageId: string; photos: readonly NewPhoto[]; actor: Actor; now: Date },
): Promise<number> {
  const known = await tx.photo.findMany({
    where: { fileKey: { in: o.photos.map(({ fileKey }) => fileKey) } },
    select: { fileKey: true },
  });
  const photos = o.photos.filter(({ fileKey }) => known.every((photo) => photo.fileKey !== fileKey));
  if (photos.length === 0) return 0;
  const there = await tx.photo.count({ where: { jobId: o.jobId, purpose: 'message' } });
  if (there + photos.length > MOST_PHOTOS_OF_MESSAGES) {
    throw new Refusal(
      'invalid',
      `We have ${there} photos from you already, and can keep ${MOST_PHOTOS_OF_MESSAGES}.`,
      'photos',
    );
  }
  await writePhotos(tx, { ...o, photos, purpose: 'message' });
  return photos.length;
}
