import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import type { OnJob } from './actor';
import { MOST_MARKS, type PhotoMark } from './rules/photo-marks';
import { writeEvent } from './write-event';

/** Puts a caption and marks on a photo of a job in the place of those it had. The photo itself stays as it was taken. */
export async function describePhoto(
  o: OnJob & { photoId: string; caption: string; marks: readonly PhotoMark[] },
): Promise<void> {
  if (o.marks.length > MOST_MARKS) throw new Refusal('invalid', `A photo holds at most ${MOST_MARKS} marks.`);
  await transaction(async (tx) => {
    const { count } = await tx.photo.updateMany({
      where: { id: o.photoId, jobId: o.jobId },
      data: { caption: o.caption, marks: o.marks.map(({ x, y, text }) => ({ x, y, text })) },
    });
    if (count === 0) throw new Refusal('not-found', 'This photo is not one of this job.');
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      // Two people may describe one photo: the second is told, and sees what the first wrote.
      expected: { version: o.version },
      event: { kind: 'photo-described', data: { photoId: o.photoId, marks: o.marks.length } },
    });
  });
}
