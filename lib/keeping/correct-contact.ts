import { transaction } from '@/lib/db/transaction';
import type { OnJob } from '@/lib/jobs/actor';
import { type AddressAnswers, addressLinesOf } from '@/lib/jobs/rules/address';
import { writeEvent } from '@/lib/jobs/write-event';
import { writeNewLink } from '@/lib/jobs/write-new-link';
import { Refusal } from '@/lib/outcome';
import { emailKey } from '@/lib/quotes/rules/request-answers';
import { noteSeen } from './seen';
import { readdressMail } from './write-mail-address';

/**
 * Puts right how the customer of a job is called and reached (GDPR Article 16). Letters of the job that have not left, were
 * given up or came back go to the new address from now on. Letters that reached the old one hold the private link: where the
 * address changes, `newLink` ends every link and sends a new one to the right one. The request that the job was booked from is
 * put right with it, so that the person stays one. Invoices that were issued keep what they said.
 */
export async function correctContact(
  o: OnJob & { contact: AddressAnswers; newLink: boolean },
): Promise<void> {
  await transaction(async (tx) => {
    const job = await tx.job.findUnique({ where: { id: o.jobId }, select: { customer: true } });
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    const { customer } = job;
    if (customer.erasedAt) throw new Refusal('conflict', 'The data of this person was removed.');
    const { address1, address2, ...contact } = o.contact;
    const addressLines = addressLinesOf({ address1, address2 });
    await tx.customer.update({ where: { id: customer.id }, data: { ...contact, addressLines } });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version },
      event: { kind: 'contact-corrected', data: {} },
    });
    const ofCustomer = { job: { customerId: customer.id } };
    const requests = await tx.quoteRequest.findMany({
      where: { quote: ofCustomer },
      select: { quoteId: true, email: true },
    });
    const { name, email, phone } = contact;
    await tx.quoteRequest.updateMany({
      where: { quote: ofCustomer },
      data: { name, email, emailKey: emailKey(email), phone },
    });
    await readdressMail(tx, {
      of: { OR: [ofCustomer, { quoteId: { in: requests.map(({ quoteId }) => quoteId) } }] },
      from: [customer.email, ...requests.map((request) => request.email)],
      to: email,
    });
    if (o.newLink && emailKey(email) !== emailKey(customer.email)) {
      await writeNewLink(tx, { jobId: o.jobId, to: email, actor: o.actor, now: o.now });
    }
    await noteSeen({ userId: o.actor.id, what: 'corrected', email, jobId: o.jobId, now: o.now }, tx);
  });
}
