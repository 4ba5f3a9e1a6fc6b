import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { balanceOf } from './rules/balance';
import { moneyOfJob } from './stored-money';
import { issueForJob } from './write-invoice-of-job';

/** Issues a job's invoice before the unit is ready, and writes to the customer. */
export async function issueInvoice(o: ByStaff & { jobId: string }): Promise<{ number: string }> {
  return transaction(async (tx) => {
    const job = await moneyOfJob(tx, o.jobId);
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.stage === 'cancelled')
      throw new Refusal('conflict', 'This job was cancelled. There is nothing to invoice.');
    const invoice = await issueForJob(tx, o);
    if (!invoice)
      throw new Refusal(
        'conflict',
        'There is nothing to invoice: the agreed price is 0, or its invoice was issued already.',
      );
    const after = (await moneyOfJob(tx, o.jobId)) ?? job;
    await queueMail(tx, {
      template: 'invoice-issued',
      data: { number: invoice.number, balance: balanceOf(after).owed, dueOn: invoice.dueOn },
      to: job.customer.email,
      jobId: o.jobId,
      now: o.now,
    });
    return { number: invoice.number };
  });
}
