import { dayInZone } from '@/lib/calendar/day';
import type { Prisma } from '@/lib/db/generated/client';
import type { AwaitedParcel } from './rules/parcel-wait';

/** What must be known of a booked job to say how long its parcel has been awaited. */
export const AWAITED = {
  bookedAt: true,
  parcelNamedAt: true,
  parcelRemindedAt: true,
} satisfies Prisma.JobSelect;

export function awaitedParcel(
  job: Prisma.JobGetPayload<{ select: typeof AWAITED }>,
  timeZone: string,
): AwaitedParcel {
  const dayOf = (at: Date | null) => at && dayInZone(at, timeZone);
  return {
    bookedOn: dayInZone(job.bookedAt, timeZone),
    namedOn: dayOf(job.parcelNamedAt),
    remindedOn: dayOf(job.parcelRemindedAt),
  };
}
