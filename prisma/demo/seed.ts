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
import { WAITING } from './stories/waiting';
import { closingDaysAround, writeWorkshop } from './workshop';

/**
 * Fills an empty database with the workshop Quay & Alder and some sixty jobs of its last fourteen months, each made by the
 * program's own use cases. The same `now` gives the same rows, and any `now` the same numbers.
 */
export async function seedDemo({ now }: { now: Date }): Promise<void> {
  if ((await db.job.count()) > 0) return;
  const days = demoDays(now);
  const opened = days.ago(460);
  await transaction(async (tx) => {
    await writeWorkshop(tx, now);
    await tx.closingDay.createMany({
      data: closingDaysAround(days.today).map(({ day, name }) => ({ day: dayToDate(day), name })),
    });
    await loadCatalogue(tx, now);
  });
  forgetCalendars();
  void opened;
  const shop = new Shop(days, await hireStaff());
  for (const story of WAITING) await withRandomSource(sourceOf(story.key), () => story.tell(shop, story.key));
  await keepMail();
}

async function keepMail(): Promise<void> {
  await transaction(async (tx) => {
    const mails = await tx.mail.findMany({ where: { state: 'queued' }, select: { id: true } });
    await tx.mail.updateMany({ where: { state: 'queued' }, data: { state: 'kept' } });
    const ids = mails.map((mail) => mail.id);
    await sender().deleteJob(mailQueue, ids, { db: within(tx) });
  });
}
