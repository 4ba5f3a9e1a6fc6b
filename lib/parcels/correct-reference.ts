import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { factsOf } from '@/lib/jobs/facts';
import { readJob } from '@/lib/jobs/records';
import { LEFT_STAGES } from '@/lib/jobs/rules/stage-sets';
import { writeEvent } from '@/lib/jobs/write-event';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readCarrierRows } from './records';
import { trackingAddress } from './rules/carriers';
import { referenceProblem } from './rules/reference';

/** Puts the carrier's reference of a parcel that left right, and writes it to the customer, who was told a wrong one. */
export async function correctReference(o: OnJob & { carrierReference: string }): Promise<void> {
  const { carrierReference } = o;
  const problem = referenceProblem(carrierReference);
  if (problem) throw new Refusal('invalid', problem, 'carrierReference');
  await transaction(async (tx) => {
    const job = await readJob({ id: o.jobId }, tx);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    const { carrier, customer } = job;
    if (!factsOf(job).isWithCarrier) throw new Refusal('conflict', 'No carrier was given this unit.');
    if (customer.erasedAt) throw new Refusal('conflict', 'The data of this customer was removed.');
    if (job.carrierReference === carrierReference) {
      throw new Refusal('invalid', 'This is the reference that is kept already', 'carrierReference');
    }
    await writeEvent(tx, {
      jobId: job.id,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: LEFT_STAGES },
      set: { carrierReference },
      event: { kind: 'reference-corrected', data: { reference: carrierReference } },
    });
    const tracking = trackingAddress(carrier, carrierReference, await readCarrierRows(tx));
    await queueMail(tx, {
      template: 'reference-corrected',
      data: { carrier, carrierReference, ...(tracking && { tracking }) },
      to: customer.email,
      jobId: job.id,
      now: o.now,
    });
  });
}
