import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { formatMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { bookedLine, revisionTotals } from '@/lib/quotes/rules/lines';
import { taxCategory } from '@/lib/quotes/stored-lines';
import { readWorkshop } from '@/lib/workshop/records';
import { openJob } from './open-job';
import { hashToken, newestToken } from './private-link';
import { draftAnswers, fullAnswers, toldAccessories } from './rules/booking';
import { postedAnswer } from './rules/posted-answer';

export type Booked = { number: string; token: string; isNew: boolean };

/**
 * Turns a finished draft into a job, with its agreed price, private link, first event and mail.
 *
 * The confirm button may be pressed twice, or the answer lost on the way back: the draft's row is locked, so that the
 * second press finds the job the first one made and shows it instead of booking again.
 */
export async function book(o: { draftToken: string; now: Date }): Promise<Booked> {
  return transaction(async (tx) => {
    const tokenHash = hashToken(o.draftToken);
    await tx.$queryRaw`SELECT 1 FROM "booking_draft" WHERE "tokenHash" = ${tokenHash} FOR UPDATE`;
    const draft = await tx.bookingDraft.findUnique({
      where: { tokenHash },
      select: { id: true, answers: true, repairId: true, job: { select: { id: true, number: true } } },
    });
    if (!draft)
      throw new Refusal('not-found', 'This booking was not found. Start again from the price list.');
    if (draft.job) {
      const token = await newestToken(tx, draft.job.id);
      if (!token)
        throw new Refusal('not-found', 'This booking was sent, and its private link was withdrawn.');
      return { number: draft.job.number, token, isNew: false };
    }

    const answers = fullAnswers(draftAnswers.parse(draft.answers));
    if (!answers) throw new Refusal('invalid', 'Some answers are still missing.');
    const workshop = await readWorkshop(tx);
    const repair = await tx.repair.findUniqueOrThrow({
      where: { id: draft.repairId },
      include: { model: true },
    });
    if (postedAnswer(repair.model, answers.parcel.battery).may === 'do-not-post') {
      throw new Refusal('invalid', 'This unit must not be posted.', 'battery');
    }

    const { address } = answers;
    const customer = await tx.customer.create({
      data: {
        name: address.name,
        email: address.email,
        phone: address.phone,
        addressLines: [address.address1, address.address2].filter((line) => line !== ''),
        postcode: address.postcode,
        town: address.town,
        country: address.country,
        createdAt: o.now,
      },
      select: { id: true },
    });
    const line = bookedLine({ ...repair, taxCategory: taxCategory.parse(repair.taxCategory) });
    const { gross } = revisionTotals([line], workshop.pricesIncludeTax);
    const job = await openJob(tx, {
      kind: 'repair',
      customerId: customer.id,
      modelId: repair.modelId,
      repairId: repair.id,
      serial: answers.unit.serial,
      problem: answers.problem.problem,
      history: answers.problem.history,
      batteryAnswer: answers.parcel.battery,
      dataAnswer: answers.parcel.data,
      accessories: toldAccessories(answers.parcel),
      lines: [line],
      isGross: workshop.pricesIncludeTax,
      reason: 'Booked from the price list',
      agreedText: `${repair.name} at ${formatMoney(gross, workshop.currency, workshop.locale)} with tax, under the terms of the day.`,
      currency: workshop.currency,
      validDays: workshop.approvalDays,
      timeZone: workshop.timeZone,
      actor: { kind: 'customer' },
      now: o.now,
    });
    await tx.bookingDraft.update({ where: { id: draft.id }, data: { jobId: job.id, updatedAt: o.now } });
    await queueMail(tx, { template: 'job-booked', data: {}, to: address.email, jobId: job.id, now: o.now });
    return { number: job.number, token: job.token, isNew: true };
  });
}
