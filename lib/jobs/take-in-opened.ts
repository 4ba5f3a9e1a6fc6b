import { sameButForCapitals } from '@/lib/db/like';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { asShown, requireMove } from './facts';
import { type JobRecord, readJob, readStage } from './records';
import { moveOf } from './rules/stages';
import { type Arrival, writeArrival } from './write-arrival';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';

/** The job that was opened for the parcel, as whoever takes it in saw it. */
export type Opened = { jobId: string; version: number };

/**
 * Takes in a booked parcel for which a job was opened by mistake, as if its customer had not booked. The booking has the photos and
 * messages of that job, and the day on which the parcel came; that job ends, and of it nothing but its history stays. Its private
 * links open the booking where both are of one address, and nothing any more where they are not.
 */
export async function takeInOpened(
  o: Omit<Arrival, 'opened' | 'actor'> & {
    actor: Extract<Arrival['actor'], { id: string }>;
    opened: Opened;
  },
): ReturnType<typeof writeArrival> {
  return transaction(async (tx) => {
    await lockJob(tx, o.opened.jobId);
    const opened = asShown(
      await readJob({ id: o.opened.jobId }, tx),
      o.opened.version,
      'Nothing was taken in.',
    );
    requireMove(opened, 'is-of-booking', o.actor);
    await lockJob(tx, o.jobId);
    const booking = asShown(await readJob({ id: o.jobId }, tx), o.version, 'Nothing was taken in.');
    if (opened.arrivedAt === null) throw new Refusal('conflict', 'This parcel has not come.');
    const { from, to } = moveOf('is-of-booking');
    await writeEvent(tx, {
      jobId: opened.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.opened.version, stages: from },
      from: readStage(opened.stage),
      to,
      event: { kind: 'is-of-booking', data: { booking: booking.number } },
    });
    await handOver(tx, { opened, booking, now: o.now });
    const photos = opened.photos.filter(({ userId }) => userId !== null).length;
    return writeArrival(tx, {
      ...o,
      opened: { number: opened.number, cameAt: opened.arrivedAt, photos },
    });
  });
}

async function handOver(
  tx: Tx,
  { opened, booking, now }: { opened: JobRecord; booking: JobRecord; now: Date },
): Promise<void> {
  const move = { where: { jobId: opened.id }, data: { jobId: booking.id } };
  await tx.photo.updateMany(move);
  await tx.message.updateMany(move);
  const { email } = booking.customer;
  const isOneAddress =
    email !== '' &&
    (await tx.customer.count({ where: { id: opened.customer.id, email: sameButForCapitals(email) } })) > 0;
  if (isOneAddress) await tx.privateLink.updateMany(move);
  else await tx.privateLink.updateMany({ where: { jobId: opened.id }, data: { revokedAt: now } });
}
