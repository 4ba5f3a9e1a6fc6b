import { type Tx, transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { agreedOf, isAgreedTo } from '@/lib/quotes/rules/agreed';
import { readWorkshop } from '@/lib/workshop/records';
import { type Actor, actorId } from './actor';
import { readStage } from './records';
import { BEFORE_READY } from './rules/stage-sets';
import { writeEvent } from './write-event';
import { writeMessagePhotos } from './write-message-photos';
import { idOfSent, writeOnce } from './write-once';
import type { NewPhoto } from './write-photos';
import { settleAnswered } from './write-settled';
import { takeUpAnswered } from './write-unclaimed';

/** A message on the job, with photos of the customer's, mirrored by mail to the other side. */
export async function sendMessage(o: {
  jobId: string;
  text: string;
  /** stored already, and not yet tied to anything */
  photos?: readonly NewPhoto[];
  formKey?: string | undefined;
  /** staff's: the waiting message of the customer that they saw last, '' for none; left out where they know all */
  seen?: string | undefined;
  actor: Actor;
  now: Date;
}): Promise<void> {
  const { photos = [] } = o;
  await writeOnce('message_pkey', () =>
    transaction(async (tx) => {
      const job = await tx.job.findUnique({
        where: { id: o.jobId },
        select: {
          stage: true,
          customer: { select: { email: true, erasedAt: true } },
          quotes: { select: { revisions: { select: { state: true, revision: true, decidedBy: true } } } },
        },
      });
      if (!job) throw new Refusal('not-found', 'There is no such job.');
      if (job.customer.erasedAt) throw new Refusal('conflict', 'The data of this customer was removed.');
      const author = o.actor.kind === 'customer' ? 'customer' : 'staff';
      const message = await tx.message.create({
        data: {
          ...idOfSent(o.formKey, [o.jobId, author, o.text, ...photos.map(({ sha256 }) => sha256)]),
          jobId: o.jobId,
          author,
          userId: actorId(o.actor),
          text: o.text,
          at: o.now,
        },
        select: { id: true },
      });
      await writeEvent(tx, {
        jobId: o.jobId,
        actor: o.actor,
        now: o.now,
        event: { kind: 'message-sent', data: { messageId: message.id, author } },
      });
      const shown = await writeMessagePhotos(tx, { ...o, photos, messageId: message.id });
      if (author === 'customer') await takeUpUnclaimed(tx, o);
      else if ('id' in o.actor) await settleAnswered(tx, { ...o, about: { jobId: o.jobId }, actor: o.actor });
      const to = author === 'staff' ? job.customer.email : (await readWorkshop(tx)).email;
      if (to === '') return;
      await queueMail(tx, {
        ...(author === 'staff'
          ? {
              template: 'message-from-workshop',
              data: { text: o.text, ...(goesOn(job) && { goesOn: true }) },
            }
          : {
              template: 'message-from-customer',
              data: { text: o.text, ...(shown > 0 && { photos: shown }) },
            }),
        to,
        jobId: o.jobId,
        now: o.now,
      });
    }),
  );
}

/** Whether the work a customer agreed to runs on beside a message: not while a price waits, and not once it is done. */
function goesOn(job: {
  stage: string;
  quotes: readonly { revisions: readonly { state: string; revision: number; decidedBy: string | null }[] }[];
}): boolean {
  return BEFORE_READY.includes(readStage(job.stage)) && isAgreedTo(agreedOf(job));
}

/** Whoever answers a notice is not silent. The event of the message has locked the job, so its stage is what it is. */
async function takeUpUnclaimed(tx: Tx, o: { jobId: string; actor: Actor; now: Date }): Promise<void> {
  const { stage } = await tx.job.findUniqueOrThrow({ where: { id: o.jobId }, select: { stage: true } });
  if (stage === 'unclaimed') await takeUpAnswered(tx, { ...o, note: 'The customer wrote to us' });
}
