import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { db } from '@/lib/db/client';
import { type Tx, transaction } from '@/lib/db/transaction';
import { showNumber } from '@/lib/numbers/job-number';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { taxCategory } from '@/lib/quotes/stored-lines';
import { COVER_FACTS, readCoverEnds } from '@/lib/warranty/stored-cover-ends';
import { readHeldWorkshop } from '@/lib/workshop/records';
import { requireBookingsAtDesk } from '@/lib/workshop/require-bookings';
import type { ByStaff } from './actor';
import { openJob } from './open-job';
import type { AddressAnswers } from './rules/address';
import { DATA_NOT_ASKED } from './rules/booking';
import { writeArrival } from './write-arrival';
import { writeCustomer } from './write-customer';
import { idOfSent, writeOnce } from './write-once';
import type { NewPhoto } from './write-photos';

export type WalkIn = ByStaff & {
  customer: AddressAnswers;
  repairId: string;
  /** as read from the unit */
  serial: string;
  /** what the letter in the parcel says */
  problem: string;
  /** what came with the unit */
  extra: readonly string[];
  /** how the battery looks to whoever unpacked it: an answer of lib/parcels/rules/battery-answers.ts */
  batteryAnswer: string;
  /** cover runs on the unit, and it came for something else */
  isOtherMatter: boolean;
  photos: readonly NewPhoto[];
  /** one key for one form: the same sent twice opens one job */
  formKey: string;
};

/** What stands as the price until the customer has said yes to one. */
const NOT_AGREED = 'No price is agreed yet';

/**
 * Opens a job for a parcel that came without a booking, and takes the unit in at once. Nobody but the customer can agree
 * to a price and to the terms: the job's first price is nothing, written by staff, and the table of stages lets no repair
 * start before the customer has said yes to another. The mail leads to the private link, where they answer.
 *
 * Refuses a serial for which a booking is expected: that parcel belongs to it; one under running cover, which needs a claim unless
 * it came for something else; and any while the workshop has no address.
 */
export async function walkIn(o: WalkIn): Promise<{ number: string }> {
  const { actor: _, now: __, photos, ...said } = o;
  const { id } = idOfSent(o.formKey, [said, photos.map(({ sha256 }) => sha256)]);
  await writeOnce('job_pkey', () => transaction((tx) => write(tx, id, o)));
  return db.job.findUniqueOrThrow({ where: { id }, select: { number: true } });
}

async function write(tx: Tx, id: string, o: WalkIn): Promise<void> {
  const workshop = await readHeldWorkshop(tx);
  requireBookingsAtDesk(workshop);
  await refuseBooked(tx, o);
  if (!o.isOtherMatter) await refuseCovered(tx, o, workshop);
  const repair = await tx.repair.findUnique({
    where: { id: o.repairId },
    select: { modelId: true, taxCategory: true, taxRateBps: true },
  });
  if (!repair) throw new Refusal('invalid', 'Choose a repair from the list.', 'repair');
  const customer = await writeCustomer(tx, o.customer, o.now);
  const nothing: QuoteLine = {
    kind: 'adjustment',
    description: NOT_AGREED,
    amount: 0,
    category: taxCategory.parse(repair.taxCategory),
    rateBps: repair.taxRateBps,
  };
  const job = await openJob(tx, {
    id,
    kind: 'repair',
    customerId: customer.id,
    modelId: repair.modelId,
    repairId: o.repairId,
    serial: o.serial,
    problem: o.problem,
    history: [],
    batteryAnswer: o.batteryAnswer,
    dataAnswer: DATA_NOT_ASKED,
    accessories: [],
    lines: [nothing],
    isGross: workshop.pricesIncludeTax,
    isInspectionFeeTakenOff: workshop.isInspectionFeeTakenOff,
    reason: 'The parcel came without a booking',
    agreedText: 'Nothing is agreed yet. The customer is asked before anything is done.',
    currency: workshop.currency,
    validDays: workshop.approvalDays,
    timeZone: workshop.timeZone,
    actor: o.actor,
    now: o.now,
  });
  await writeArrival(tx, {
    jobId: job.id,
    version: 1,
    serial: o.serial,
    arrived: [],
    extra: o.extra,
    photos: o.photos,
    isUnbooked: true,
    actor: o.actor,
    now: o.now,
  });
}

async function refuseBooked(tx: Tx, { serial, repairId }: WalkIn): Promise<void> {
  const booked = await tx.job.findFirst({
    where: { stage: 'booked', serialKey: foldSerial(serial), model: { repairs: { some: { id: repairId } } } },
    select: { number: true },
  });
  if (!booked) return;
  throw new Refusal(
    'conflict',
    `A booking for this serial is expected: ${showNumber(booked.number)}. Take the parcel in there.`,
    'serial',
  );
}

/** The job of a walk-in can become no claim afterwards, so what may be free of charge is asked about first. */
async function refuseCovered(
  tx: Tx,
  { serial, repairId, now }: WalkIn,
  { timeZone, locale }: { timeZone: string; locale: string },
): Promise<void> {
  const certificates = await tx.certificate.findMany({
    where: {
      serialKey: foldSerial(serial),
      supersededAt: null,
      job: { model: { repairs: { some: { id: repairId } } } },
    },
    select: COVER_FACTS,
  });
  const ends = await readCoverEnds(certificates, tx);
  const today = dayInZone(now, timeZone);
  for (const { id, number } of certificates) {
    const end = ends.get(id)?.end;
    if (end === undefined || end < today) continue;
    throw new Refusal(
      'conflict',
      `Certificate ${showNumber(number)} covers this unit until ${formatDay(end, locale, 'short')}. Find the certificate under Arrivals and open a claim on it, or tick that it came for something else.`,
      'serial',
    );
  }
}
