import { dayToDate } from '@/lib/calendar/day';
import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';
import { transaction } from '@/lib/db/transaction';
import { mailQueue, sender, within } from '@/lib/mail/boss';
import { withRandomSource } from '@/lib/numbers/draw';
import { forgetCalendars } from '@/lib/workshop/records';
import { loadCatalogue } from './catalogue';
import { sourceOf } from './chance';
import { demoDays } from './days';
import { forgetPictures } from './photos';
import { Shop } from './shop';
import { hireStaff } from './staff';
import { OPEN, SHORT_COVER } from './stories/claims-open';
import { LESSON, SETTLED } from './stories/claims-settled';
import { EXPECTED } from './stories/expected';
import { FIRST_MONTHS } from './stories/first-months';
import { GOING_BACK } from './stories/going-back';
import { LATER_MONTHS } from './stories/later-months';
import { REQUESTS } from './stories/requests';
import { USUAL_MONTHS } from './stories/usual-months';
import { WAITING } from './stories/waiting';
import { Turns } from './turns';
import { clearUnfinished, isDemoWanted, isUnfinished, removeMark, setMark } from './unfinished';
import { closingDaysAround, writeWorkshop } from './workshop';

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
  ...REQUESTS,
  ...USUAL_MONTHS,
];

/** Any number that nothing else in the database locks. */
const LOCK = 741_852;

/**
 * Fills an empty database with the workshop Quay & Alder and some hundred and ten jobs of its last fourteen months and the
 * prices it was asked for, all made by the program's own use cases, side by side as they happened. Any `now` gives the
 * same numbers, and the same `now` the same history. Leaves a database alone that has a workshop already.
 *
 * Two instances may start together on one server: the lock lets one fill it, and the other then finds it done.
 */
export async function seedDemo({ now }: { now: Date }): Promise<void> {
  await onServer(config.databaseUrl, async (client) => {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK]);
    try {
      if (await isDemoWanted()) await fill(now);
    } finally {
      await client.query('SELECT pg_advisory_unlock($1)', [LOCK]);
    }
  });
}

async function fill(now: Date): Promise<void> {
  console.log('Filling the demonstration workshop, under a minute; later starts skip this.');
  if (await isUnfinished()) await clearUnfinished();
  forgetPictures();
  const days = demoDays(now);
  await transaction(async (tx) => {
    await setMark(tx);
    await writeWorkshop(tx, now);
    await tx.closingDay.createMany({
      data: closingDaysAround(days.today).map(({ day, name }) => ({ day: dayToDate(day), name })),
    });
    await loadCatalogue(tx, now, { sheets: 'first' });
  });
  forgetCalendars();
  const turns = new Turns();
  const shop = new Shop(days, await hireStaff(), turns);
  await turns.tellAll(
    STORIES.map(({ key, tell }) => ({
      key,
      tell: () => withRandomSource(sourceOf(key), () => tell(shop, key)),
    })),
  );
  await keepMail();
  forgetCalendars();
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
    await removeMark(tx);
  });
}
