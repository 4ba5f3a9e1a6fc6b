import { type Day, dayFromDate, dayInZone, dayToDate } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { NEW_PROMISE_SENTENCES, newPromiseProblem } from '@/lib/promise/rules/new-promise';
import { readCalendar, readWorkshop } from '@/lib/workshop/records';
import type { OnJob } from './actor';
import { PROMISED, standingPromise } from './records';
import { PROMISE_STAGES } from './rules/stage-sets';
import { changedMeanwhile, writeEvent } from './write-event';

const CALLED_OFF = 'No repair is to come that this day was promised for';

/** Moves the promised day, with a reason in the customer's words, and tells the customer. */
export async function movePromise(o: OnJob & { to: Day; reason: string }): Promise<void> {
  await transaction(async (tx) => {
    const job = await tx.job.findUnique({
      where: { id: o.jobId },
      select: { ...PROMISED, version: true, customer: { select: { email: true } } },
    });
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.version !== o.version) throw changedMeanwhile();
    const workshop = await readWorkshop(tx);
    const today = dayInZone(o.now, workshop.timeZone);
    const from = job.promisedOn && dayFromDate(job.promisedOn);
    if (from && !standingPromise(job)) throw new Refusal('invalid', CALLED_OFF, 'to');
    const calendar = await readCalendar(workshop, o.to, tx);
    const problem = newPromiseProblem({ promisedOn: from, to: o.to, today, calendar });
    if (problem || !from) throw new Refusal('invalid', NEW_PROMISE_SENTENCES[problem ?? 'no-promise'], 'to');
    const moved = { from, to: o.to, reason: o.reason };
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: PROMISE_STAGES },
      set: { promisedOn: dayToDate(o.to) },
      event: { kind: 'promise-moved', data: moved },
    });
    await queueMail(tx, {
      template: 'promise-moved',
      data: moved,
      to: job.customer.email,
      jobId: o.jobId,
      now: o.now,
    });
  });
}
