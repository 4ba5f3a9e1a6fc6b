import { randomUUID } from 'node:crypto';
import { transaction } from '@/lib/db/transaction';
import { hashToken, linkToken } from '@/lib/jobs/private-link';
import { draftAnswers, unitAnswers } from '@/lib/jobs/rules/booking';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { requireBookings } from '@/lib/workshop/require-bookings';
import { readQuote } from './records';

// A quote's draft is opened by a token worked out from its id, so that the way back to it is found without storing it.
const NONCE = 'draft-of-a-quote';

/**
 * Begins the booking of an accepted quote with everything known filled in, and returns the token that opens it. One that
 * was begun before and not finished is gone on with.
 */
export async function startBooking(o: { quoteId: string; now: Date }): Promise<string> {
  return transaction(async (tx) => {
    await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${o.quoteId} FOR UPDATE`;
    const quote = await readQuote({ id: o.quoteId }, tx);
    if (!quote) throw new Refusal('not-found', 'There is no such quote.');
    const { request } = quote;
    if (request.state === 'booked') throw new Refusal('conflict', 'This repair is booked already.');
    if (request.state === 'turned-down' || request.state === 'lapsed') {
      throw new Refusal('conflict', 'This price is not held any more. Nothing is booked.');
    }
    if (request.state !== 'accepted' || !request.repairId) {
      throw new Refusal('conflict', 'Say yes to the price first. Then you can book.');
    }
    requireBookings(await readWorkshop(tx));
    const begun = await tx.bookingDraft.findFirst({
      where: { quoteId: quote.id, jobId: null },
      orderBy: { createdAt: 'desc' },
      select: { id: true },
    });
    if (begun) {
      await tx.bookingDraft.update({ where: { id: begun.id }, data: { updatedAt: o.now } });
      return linkToken({ id: begun.id, nonce: NONCE });
    }
    const id = randomUUID();
    const token = linkToken({ id, nonce: NONCE });
    const unit = unitAnswers.safeParse({ serial: request.serialTyped });
    await tx.bookingDraft.create({
      data: {
        id,
        tokenHash: hashToken(token),
        repairId: request.repairId,
        quoteId: quote.id,
        answers: draftAnswers.parse({
          ...(unit.success ? { unit: unit.data } : {}),
          problem: { problem: request.problem, history: request.history },
        }),
        createdAt: o.now,
        updatedAt: o.now,
      },
    });
    return token;
  });
}
