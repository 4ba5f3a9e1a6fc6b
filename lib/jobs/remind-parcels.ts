import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { attempt } from '@/lib/outcome';
import { readClosureToTell, readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { type JobRecord, readJob } from './records';
import { parcelWait } from './rules/parcel-wait';
import { AWAITED, awaitedParcel } from './stored-parcel-wait';
import { slipOfJob } from './stored-recall';
import { writeEvent } from './write-event';

/** So many letters a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/**
 * Reminds customers of parcels that were booked and have not come, by the clock; returns how many. A unit that must not be posted is
 * left alone: how it gets here was to be arranged. The version decides between two rounds at once, and against a customer who
 * cancels or names their parcel at the same moment: whoever comes second finds the job changed, and no letter leaves.
 */
export async function remindOfParcels(now: Date): Promise<number> {
  const workshop = await readWorkshop();
  if (workshop.parcelRemindDays === 0) return 0;
  const today = dayInZone(now, workshop.timeZone);
  const rows = await db.job.findMany({
    where: { stage: 'booked' },
    orderBy: [{ bookedAt: 'asc' }, { id: 'asc' }],
    select: { id: true, ...AWAITED },
  });
  const isDue = (row: Parameters<typeof awaitedParcel>[0]) =>
    parcelWait(awaitedParcel(row, workshop.timeZone), workshop, today).isReminderDue;
  const due = rows.filter(isDue);
  const closure = due.length > 0 ? await readClosureToTell(workshop, today) : null;
  let reminded = 0;
  for (const { id } of due) {
    if (reminded === MOST) break;
    const job = await readJob({ id });
    // Read anew with its version: another round may have written since the list was read.
    if (!job || !isDue(job) || !(await slipOfJob(job)).isOffered) continue;
    const done = await attempt(() => remind(job, { workshop, closure, now }));
    if (done.ok) reminded += 1;
  }
  return reminded;
}

type Round = { workshop: WorkshopCard; closure: Awaited<ReturnType<typeof readClosureToTell>>; now: Date };

async function remind(job: JobRecord, { workshop, closure, now }: Round): Promise<void> {
  const today = dayInZone(now, workshop.timeZone);
  const parcel = { ...awaitedParcel(job, workshop.timeZone), remindedOn: today };
  const { keptUntil } = parcelWait(parcel, workshop, today);
  await transaction(async (tx) => {
    await writeEvent(tx, {
      jobId: job.id,
      actor: { kind: 'clock' },
      now,
      expected: { version: job.version, stages: ['booked'] },
      set: { parcelRemindedAt: now },
      event: { kind: 'parcel-reminded', data: {} },
    });
    await queueMail(tx, {
      template: 'parcel-awaited',
      data: {
        keptUntil,
        ...(job.inboundReference !== '' && { isNamed: true }),
        ...(closure && { closure: { from: closure.from, to: closure.to, backOn: closure.backOn } }),
      },
      to: job.customer.email,
      jobId: job.id,
      now,
    });
  });
}
