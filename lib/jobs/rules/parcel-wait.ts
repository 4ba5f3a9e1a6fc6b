import { addDays, compareDays, type Day, daysBetween, maxDay } from '@/lib/calendar/day';

export type ParcelSettings = {
  /** days without a parcel after which its customer is reminded; 0: never */
  parcelRemindDays: number;
  /** days without a parcel after which it counts as not coming */
  parcelOverDays: number;
};

/** A reminder leaves its customer at least so many days, however late it went out. Common practice, no source. */
export const DAYS_TO_ANSWER = 14;

export type AwaitedParcel = {
  bookedOn: Day;
  /** when its customer last named a parcel on its way, or another was taken in by mistake */
  namedOn: Day | null;
  remindedOn: Day | null;
};

export type ParcelWait = {
  /** the later of booking and naming */
  since: Day;
  days: number;
  /** last day it is kept open for */
  keptUntil: Day;
  isReminded: boolean;
  isReminderDue: boolean;
  isOver: boolean;
};

/**
 * How long a booked parcel has been awaited, and what follows: one reminder for each wait, then it counts as not coming. Nothing is
 * cancelled by it. A parcel named after a reminder begins a new wait. One that is over already is not reminded of any more: bookings
 * of years ago must not be written to because the program has learnt to.
 *
 * Example: booked 3 March, 14 and 45 days: the reminder is due on 17 March, it is kept until 17 April and over on the 18th.
 */
export function parcelWait(parcel: AwaitedParcel, settings: ParcelSettings, today: Day): ParcelWait {
  const { bookedOn, namedOn, remindedOn } = parcel;
  const since = namedOn === null ? bookedOn : maxDay(bookedOn, namedOn);
  const isReminded = remindedOn !== null && compareDays(remindedOn, since) >= 0;
  const term = addDays(since, settings.parcelOverDays);
  const keptUntil = isReminded ? maxDay(term, addDays(remindedOn, DAYS_TO_ANSWER)) : term;
  const days = daysBetween(since, today);
  const isOver = compareDays(today, keptUntil) > 0;
  const isDue = settings.parcelRemindDays > 0 && days >= settings.parcelRemindDays;
  return { since, days, keptUntil, isReminded, isReminderDue: isDue && !isReminded && !isOver, isOver };
}
