import { type Day, dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { forgetCalendars } from './records';

/** Closes the workshop on a day; naming a day again changes why. */
export async function closeOn(day: Day, name: string): Promise<void> {
  const stored = dayToDate(day);
  await db.closingDay.upsert({ where: { day: stored }, create: { day: stored, name }, update: { name } });
  forgetCalendars();
}

/** Opens the workshop again on a day it was closed. */
export async function openOn(day: Day): Promise<void> {
  await db.closingDay.deleteMany({ where: { day: dayToDate(day) } });
  forgetCalendars();
}
