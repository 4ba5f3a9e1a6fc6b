import { type Tx, transaction } from '@/lib/db/transaction';
import { deleteFile } from '@/lib/files/store';
import { queueMail } from '@/lib/mail/queue';
import { foldSerial } from '@/lib/numbers/serial';
import type { OnJob } from './actor';
import { asShown, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { parseEvent } from './rules/events';
import { firstSettled } from './rules/settled-serial';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

/**
 * Takes back that a unit is here: its parcel was taken in under the wrong booking. The booking stands as it did before, the promise
 * made on that day is gone, and its customer, who was told otherwise, is told: the wait for their parcel begins anew. The photos
 * show another customer's unit and go for good; in the history their hashes stay.
 *
 * Files go last and before the commit, as lib/keeping/write-removal.ts does it: a row that is still there names them.
 */
export async function undoArrival(o: OnJob & { reason: string }): Promise<void> {
  const { from, to } = moveOf('undo-arrival');
  await transaction(async (tx) => {
    // What somebody else records of the unit at the same moment waits, or is seen here.
    await lockJob(tx, o.jobId);
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version);
    requireMove(job, 'undo-arrival', o.actor);
    const serialTyped = serialBefore(job);
    const photos = photosOfArrival(job);
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: from },
      set: {
        arrivedAt: null,
        arrivedSerial: null,
        serialComparison: null,
        isSerialSettled: false,
        promisedOn: null,
        parcelNamedAt: o.now,
        serialTyped,
        serialKey: foldSerial(serialTyped),
      },
      from: readStage(job.stage),
      to,
      event: {
        kind: 'arrival-undone',
        data: {
          reason: o.reason,
          ...(photos.length > 0 && { sha256: photos.map(({ sha256 }) => sha256) }),
        },
      },
    });
    await forgetAccessories(tx, job.id);
    await queueMail(tx, {
      template: 'arrival-undone',
      data: { reason: o.reason, ...(photos.length > 0 && { hadPhotos: true }) },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
    await tx.photo.deleteMany({ where: { id: { in: photos.map(({ id }) => id) } } });
    for (const { fileKey, thumbKey } of photos) {
      await deleteFile(fileKey);
      await deleteFile(thumbKey);
    }
  });
}

/** What was ticked and what came beside it is of another parcel. */
async function forgetAccessories(tx: Tx, jobId: string): Promise<void> {
  await tx.accessory.deleteMany({ where: { jobId, isTold: false } });
  await tx.accessory.updateMany({ where: { jobId }, data: { isArrived: null } });
}

/** The serial as it was kept before a person settled it by the unit that came. */
function serialBefore({ events, serialTyped }: JobRecord): string {
  const settled = firstSettled(events);
  const event = settled && parseEvent('serial-settled', settled.data);
  return event?.kind === 'serial-settled' ? (event.data.before ?? serialTyped) : serialTyped;
}

/** What staff photographed since; what the customer sent stays. */
function photosOfArrival({ photos, arrivedAt }: JobRecord): JobRecord['photos'] {
  return photos.filter(({ userId, at }) => userId !== null && arrivedAt !== null && at >= arrivedAt);
}
