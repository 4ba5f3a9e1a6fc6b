import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from './actor';
import type { SettledBy } from './rules/settled';
import { writeEvent } from './write-event';
import { lockJob } from './write-lock';
import { writeSettled } from './write-settled';

/**
 * Keeps that what a customer wrote on a job needs no answer, or how it was answered elsewhere, up to the message that was seen.
 * Nobody is written to. A second time changes nothing.
 */
export async function settleMessage(
  o: ByStaff & {
    jobId: string;
    messageId: string;
    how: SettledBy;
    /** how it was answered elsewhere; '' where it needs no answer */
    note: string;
  },
): Promise<void> {
  await transaction(async (tx) => {
    await lockJob(tx, o.jobId);
    if (!(await writeSettled(tx, { ...o, about: { jobId: o.jobId } }))) return;
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'message-settled', data: { messageId: o.messageId, how: o.how } },
    });
  });
}
