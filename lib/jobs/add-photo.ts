import { transaction } from '@/lib/db/transaction';
import type { Actor } from './actor';
import { writeEvent } from './write-event';
import { type NewPhoto, type PhotoPurpose, writePhotos } from './write-photos';

/** Adds photos to a job, each with its own line in the history. */
export async function addPhotos(o: {
  jobId: string;
  purpose: PhotoPurpose;
  photos: readonly NewPhoto[];
  actor: Actor;
  now: Date;
}): Promise<void> {
  await transaction(async (tx) => {
    for (const photoId of await writePhotos(tx, o)) {
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        event: { kind: 'photo-added', data: { photoId, purpose: o.purpose } },
      });
    }
  });
}
