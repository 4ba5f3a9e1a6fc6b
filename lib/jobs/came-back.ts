import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import type { OnJob } from './actor';
import { asShown, requireMove } from './facts';
import { readJob, readStage } from './records';
import { moveOf } from './rules/stages';
import { writeEvent } from './write-event';

/**
 * Takes in a parcel that its carrier brought back undelivered: the unit is ready to go once more, and the customer is asked for
 * their address. What was issued when it first left stands. Notices about a unit that nobody fetches begin with this day.
 */
export async function cameBack(o: OnJob & { reason: string }): Promise<void> {
  const { from, to } = moveOf('came-back');
  await transaction(async (tx) => {
    const job = asShown(await readJob({ id: o.jobId }, tx), o.version);
    requireMove(job, 'came-back', o.actor);
    if (job.customer.erasedAt) {
      throw new Refusal('conflict', 'The data of this customer was removed: there is nobody to send it to.');
    }
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: from },
      set: { sentBackAt: null, closedAt: null, soughtSince: null, carrier: '', carrierReference: '' },
      from: readStage(job.stage),
      to,
      event: {
        kind: 'came-back',
        data: { carrier: job.carrier, reference: job.carrierReference, reason: o.reason },
      },
    });
    await tx.unclaimedNotice.deleteMany({ where: { jobId: job.id } });
    await queueMail(tx, {
      template: 'parcel-came-back',
      data: { reason: o.reason, hasCertificate: job.certificates.length > 0 },
      to: job.customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
