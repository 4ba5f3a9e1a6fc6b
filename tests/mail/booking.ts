import { db } from '@/lib/db/client';
import { ADDRESS, makeBooking } from '@/tests/makers/job';
import { makeWorkshop } from '@/tests/makers/workshop';

export const NOW = new Date('2026-11-25T09:00:00Z');

/** A workshop with one booking, whose first message waits in the queue. */
export async function makeQueuedMail() {
  const { repairId } = await makeWorkshop(NOW);
  const booked = await makeBooking({ repairId, now: NOW });
  const mail = await db.mail.findFirstOrThrow({ where: { jobId: booked.jobId } });
  return { ...booked, repairId, mail, to: ADDRESS.email };
}

export async function mailRow(id: string) {
  return db.mail.findUniqueOrThrow({ where: { id } });
}

type QueueRow = { id: string; state: string; data: unknown; retry_count: number };

/** What stands in the queue itself. */
export async function queueRows(): Promise<QueueRow[]> {
  return db.$queryRaw<QueueRow[]>`
    select id::text, state::text, data, retry_count from pgboss.job where name = 'mail' order by created_on, id`;
}
