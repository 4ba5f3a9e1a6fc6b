import { transaction } from '@/lib/db/transaction';
import { idOfSent, writeOnce } from '@/lib/jobs/write-once';
import type { NewPhoto } from '@/lib/jobs/write-photos';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { CUSTOMER_MAY_WRITE, readRequestState, requestMove } from './rules/request-states';
import { writeFromCustomer } from './write-from-customer';
import { writeQuoteEvent } from './write-quote-event';

/**
 * The customer's answer to a question, with photos, mirrored to the workshop by mail. The answer takes the request back
 * to the workshop's side; words written without a question, or about a price that was sent, stay beside it as a message.
 */
export async function answerQuestion(o: {
  quoteId: string;
  text: string;
  photos: readonly NewPhoto[];
  formKey?: string | undefined;
  now: Date;
}): Promise<void> {
  const sent = [o.quoteId, o.text, o.photos.map(({ sha256 }) => sha256)];
  await writeOnce('message_pkey', () =>
    transaction(async (tx) => {
      await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
      const request = await tx.quoteRequest.findUnique({
        where: { quoteId: o.quoteId },
        select: { state: true },
      });
      if (!request) throw new Refusal('not-found', 'There is no such request.');
      const state = readRequestState(request.state);
      if (!CUSTOMER_MAY_WRITE.includes(state)) {
        throw new Refusal('conflict', 'This request is closed. Write to us by mail, or ask anew.');
      }
      const { messageId } = await writeFromCustomer(tx, { ...o, ...idOfSent(o.formKey, sent) });
      const isAnswer = state === 'questioned';
      await writeQuoteEvent(tx, {
        quoteId: o.quoteId,
        actor: { kind: 'customer' },
        now: o.now,
        event: { kind: isAnswer ? 'answered' : 'added', data: { messageId, photos: o.photos.length } },
        ...(isAnswer ? { expected: { states: [state] }, to: requestMove('answer').to } : {}),
      });
      const { email } = await readWorkshop(tx);
      if (email === '') return;
      await queueMail(tx, {
        template: 'quote-answered',
        data: { text: o.text },
        to: email,
        quoteId: o.quoteId,
        now: o.now,
      });
    }),
  );
}
