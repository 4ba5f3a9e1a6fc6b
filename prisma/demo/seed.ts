import { dayToDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { mailQueue, sender, within } from '@/lib/mail/boss';
import { withRandomSource } from '@/lib/numbers/draw';
import { forgetCalendars } from '@/lib/workshop/records';
import { loadCatalogue } from './catalogue';
import { sourceOf } from './chance';
import { demoDays } from './days';
import { Shop } from './shop';
import { hireStaff } from './staff';
import { OPEN, SHORT_COVER } from './stories/claims-open';
import { LESSON, SETTLED } from './stories/claims-settled';
import { EXPECTED } from './stories/expected';
import { FIRST_MONTHS } from './stories/first-months';
import { GOING_BACK } from './stories/going-back';
import { LATER_MONTHS } from './stories/later-months';
import { WAITING } from './stories/waiting';
import { closingDaysAround, writeWorkshop } from './workshop';

// Before and after the lesson, because a job keeps the check sheet of the day it was booked.
const STORIES = [
  ...FIRST_MONTHS,
  LESSON,
  ...LATER_MONTHS,
  SHORT_COVER,
  ...SETTLED,
  ...GOING_BACK,
  ...WAITING,
  ...EXPECTED,
  ...OPEN,
];

/**
 * Fills an empty database with the workshop Quay & Alder and some sixty jobs of its last fourteen months, each made by the
 * program's own use cases. The same `now` gives the same rows, and any `now` the same numbers.
 */
export async function seedDemo({ now }: { now: Date }): Promise<void> {
  if ((await db.job.count()) > 0) return;
  console.log('Filling the demonstration workshop, about twenty seconds; later starts skip this.');
  const days = demoDays(now);
  await transaction(async (tx) => {
    await writeWorkshop(tx, now);
    await tx.closingDay.createMany({
      data: closingDaysAround(days.today).map(({ day, name }) => ({ day: dayToDate(day), name })),
    });
    await loadCatalogue(tx, now, { sheets: 'first' });
  });
  forgetCalendars();
  const shop = new Shop(days, await hireStaff());
  for (const story of STORIES) {
    await withRandomSource(sourceOf(story.key), () => story.tell(shop, story.key));
  }
  await keepMail();
}

/**
 * Marks every message as kept and takes its job out of the queue: they are weeks old and go to invented people, so they
 * must not leave when the workshop is given a mail server.
 */
async function keepMail(): Promise<void> {
  await transaction(async (tx) => {
    const queued = await tx.mail.findMany({ where: { state: 'queued' }, select: { id: true } });
    const ids = queued.map((mail) => mail.id);
    await tx.mail.updateMany({ where: { id: { in: ids } }, data: { state: 'kept' } });
    await sender().deleteJob(mailQueue, ids, { db: within(tx) });
  });
}
