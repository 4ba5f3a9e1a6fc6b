import { dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { compareSerials, foldSerial, type SerialComparison } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import { onArrival } from '@/lib/promise/rules/on-arrival';
import { keptPromisesIn } from '@/lib/promise/stored-kept';
import { promiseDay } from '@/lib/promise/stored-promise-day';
import { readWorkshop } from '@/lib/workshop/records';
import type { Actor } from './actor';
import { accessoryDifferences } from './rules/arrival';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';
import { type NewPhoto, writePhotos } from './write-photos';

export type Arrival = {
  jobId: string;
  version: number;
  /** as read from the unit */
  serial: string;
  /** names of the told accessories that were in the parcel */
  arrived: readonly string[];
  /** names of things that came without being told */
  extra: readonly string[];
  photos: readonly NewPhoto[];
  /** of the serial on the unit */
  serialPhotos?: readonly NewPhoto[];
  /** the parcel came without a booking, and the customer has agreed to nothing yet; on a claim, it came before the claim was opened */
  isUnbooked?: boolean;
  /** of a parcel for which a job was opened first: that job, when it came, its photos, and whether the customer was told of it */
  opened?: { number: string; cameAt: Date; photos: number; isTold: boolean };
  actor: Actor;
  now: Date;
};

/**
 * Takes a parcel in, inside the caller's transaction: serial compared, accessories ticked, photos kept, promise given, customer told.
 *
 * Only a serial that is the same settles itself; anything else waits for a person (see settle-serial.ts), because a
 * misread label and a swapped unit look alike from here.
 */
export async function writeArrival(
  tx: Tx,
  o: Arrival,
): Promise<{ comparison: SerialComparison; differences: string[] }> {
  const { photos, serialPhotos = [] } = o;
  const job = await tx.job.findUnique({
    where: { id: o.jobId },
    select: {
      kind: true,
      serialTyped: true,
      customer: { select: { email: true } },
      repairId: true,
      withdrawUntil: true,
      startRequestedAt: true,
      quotes: { select: { revisions: { select: { state: true, workingDays: true } } } },
      accessories: { select: { id: true, name: true } },
      claim: { select: { certificate: { select: { serialTyped: true } } } },
    },
  });
  if (!job) throw new Refusal('not-found', 'There is no job with this number.');

  // Without a price there is nothing to promise: the day is given with the customer's yes (lib/promise/write-first.ts). The queue is
  // read before this job joins it.
  const asked = { repairId: job.repairId, ...onArrival(job), now: o.now };
  const isUnpriced = o.isUnbooked === true && job.kind !== 'claim';
  const promisedOn = isUnpriced ? null : (await promiseDay(asked, tx)).on;
  const kept = promisedOn && (await keptPromisesIn(tx, o.now, await readWorkshop(tx)));
  // Cover follows the unit of the certificate, whatever the customer typed when the claim was opened.
  const comparison = compareSerials(job.claim?.certificate.serialTyped ?? job.serialTyped, o.serial);
  const told = job.accessories.map((each) => ({ ...each, isArrived: o.arrived.includes(each.name) }));
  const extra = [...new Set(o.extra)].filter((name) => !told.some((each) => each.name === name));
  const differences = accessoryDifferences(told, extra);

  await writeEvent(tx, {
    jobId: o.jobId,
    actor: o.actor,
    now: o.now,
    expected: { version: o.version, stages: moveOf('arrive').from },
    set: {
      arrivedAt: o.opened?.cameAt ?? o.now,
      arrivedSerial: o.serial,
      serialComparison: comparison,
      isSerialSettled: comparison === 'same',
      // The same but for spaces and case: as it stands on the unit, not as it was typed from memory.
      ...(comparison === 'same' && { serialTyped: o.serial, serialKey: foldSerial(o.serial) }),
      promisedOn: promisedOn && dayToDate(promisedOn),
    },
    from: 'booked',
    to: 'arrived',
    event: {
      kind: 'unit-arrived',
      data: {
        serial: o.serial,
        comparison,
        differences,
        photos: photos.length + serialPhotos.length + (o.opened?.photos ?? 0),
        ...(o.opened && { openedAs: o.opened.number }),
      },
    },
  });
  for (const each of told) {
    await tx.accessory.update({ where: { id: each.id }, data: { isArrived: each.isArrived } });
  }
  await tx.accessory.createMany({
    data: extra.map((name) => ({ jobId: o.jobId, name, isTold: false, isArrived: true })),
  });
  const taken = { jobId: o.jobId, actor: o.actor, now: o.now };
  await writePhotos(tx, { ...taken, purpose: 'serial', photos: serialPhotos });
  await writePhotos(tx, { ...taken, purpose: 'arrival', photos });
  await queueMail(tx, {
    template: 'unit-arrived',
    data: {
      promisedOn,
      differences,
      ...(kept && { kept }),
      ...(o.isUnbooked && { isUnbooked: true }),
      ...(o.opened?.isTold && { isFound: true }),
      ...(photos.length + (o.opened?.photos ?? 0) > 0 && { hasPhotos: true }),
    },
    to: job.customer.email,
    jobId: o.jobId,
    now: o.now,
  });
  return { comparison, differences };
}
