import { transaction } from '@/lib/db/transaction';
import type { ByStaff } from '@/lib/jobs/actor';
import type { SettledBy } from '@/lib/jobs/rules/settled';
import { writeSettled } from '@/lib/jobs/write-settled';
import { writeQuoteEvent } from './write-quote-event';

/** The same as lib/jobs/settle-message.ts, of what a customer wrote on a quote that was asked for. */
export async function settleMessage(
  o: ByStaff & {
    quoteId: string;
    messageId: string;
    how: SettledBy;
    /** how it was answered elsewhere; '' where it needs no answer */
    note: string;
  },
): Promise<void> {
  await transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
    if (!(await writeSettled(tx, { ...o, about: { quoteId: o.quoteId } }))) return;
    await writeQuoteEvent(tx, {
      quoteId: o.quoteId,
      actor: o.actor,
      now: o.now,
      event: { kind: 'message-settled', data: { messageId: o.messageId, how: o.how } },
    });
  });
}
