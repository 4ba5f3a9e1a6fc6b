import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { requireBookings } from '@/lib/workshop/require-bookings';
import { agreedRevision, heldNoOf, readQuote } from './records';
import { yesAfterNo } from './rules/held-no';
import { isInspectionOnly } from './rules/inspection-fee';
import { requestMove } from './rules/request-states';
import { readAgreedWords } from './stored-agreed-words';
import { readConditions } from './stored-conditions';
import { readLine } from './stored-lines';
import { writeQuoteEvent } from './write-quote-event';
import { writeRevision } from './write-revision';

const CUSTOMER = { kind: 'customer' } as const;

/**
 * The customer who said no to a price says yes after all, while it is held. The no stays on record with its words, so the yes
 * is kept with a revision of its own: the same lines, day and conditions. Pressed twice it is one yes.
 */
export async function acceptAfterNo(o: { quoteId: string; revision: number; now: Date }): Promise<void> {
  await transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
    const quote = await readQuote({ id: o.quoteId }, tx);
    if (!quote) throw new Refusal('not-found', 'There is no such price to answer.');
    const turned = yesAfterNo(quote.events, { no: o.revision });
    if (turned !== null && turned === agreedRevision(quote)?.revision) return;
    const workshop = await readWorkshop(tx);
    requireBookings(workshop);
    const declined = heldNoOf(quote, dayInZone(o.now, workshop.timeZone));
    if (declined?.revision !== o.revision) {
      throw new Refusal(
        'conflict',
        'That price is not held any more. Write to us, and we send you a new one.',
      );
    }
    const { from, to } = requestMove('accept-after-no');
    const revision = 1 + Math.max(...quote.revisions.map((each) => each.revision));
    await writeQuoteEvent(tx, {
      quoteId: quote.id,
      actor: CUSTOMER,
      now: o.now,
      event: { kind: 'decided', data: { revision, decision: 'accepted', afterNoTo: o.revision } },
      expected: { version: quote.version, states: from },
      to,
    });
    const agreedText = readAgreedWords(
      quote,
      { ...declined, revision },
      { decision: 'accepted', afterNoTo: o.revision, locale: workshop.locale },
    );
    const { isGross, reason, onYes, onNo, proposal, workingDays, note } = declined;
    const gross = await writeRevision(tx, {
      ...{ quoteId: quote.id, revision, isGross, reason, onYes, onNo, proposal, workingDays, note },
      state: 'accepted',
      // It is the price that was sent then.
      now: declined.issuedAt,
      validUntil: dayFromDate(declined.validUntil),
      lines: declined.lines.map(readLine),
      conditions: readConditions(declined),
      decided: { at: o.now, by: CUSTOMER.kind, agreedText },
    });
    await queueMail(tx, {
      template: 'quote-accepted',
      data: { revision, gross, ...(isInspectionOnly(declined) && { isInspection: true }) },
      to: quote.request.email,
      quoteId: quote.id,
      now: o.now,
    });
  });
}
