import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { asShown, requireMove } from './facts';
import { readJob, readStage } from './records';
import { isOneAddress, OTHER_ADDRESS } from './rules/one-address';
import { moveOf } from './rules/stages';
import { type Arrival, writeArrival } from './write-arrival';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';
import { letGoOfMail } from './write-opened-mail';

/** The job that was opened for the parcel, as whoever takes it in saw it. */
export type Opened = { jobId: string; version: number };

/**
 * Takes in a booked parcel for which a job was opened by mistake, as if its customer had not booked. The booking has the photos,
 * messages and private links of that job, and the day on which the parcel came; that job ends, and of it nothing but its history
 * stays. Only under a booking of the same address: what somebody wrote to us becomes nobody else's, however the booking was found.
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
    if (!isOneAddress(opened.customer.email, booking.customer.email))
      throw new Refusal('invalid', OTHER_ADDRESS);
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
    await handOver(tx, opened.id, booking.id);
    const isTold = await letGoOfMail(tx, {
      openedId: opened.id,
      bookingId: booking.id,
      email: booking.customer.email,
    });
    const photos = opened.photos.filter(({ userId }) => userId !== null).length;
    return writeArrival(tx, {
      ...o,
      opened: { number: opened.number, cameAt: opened.arrivedAt, photos, isTold },
    });
  });
}

async function handOver(tx: Tx, openedId: string, bookingId: string): Promise<void> {
  const move = { where: { jobId: openedId }, data: { jobId: bookingId } };
  await tx.photo.updateMany(move);
  await tx.message.updateMany(move);
  await tx.privateLink.updateMany(move);
}
