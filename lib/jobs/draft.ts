import { randomBytes } from 'node:crypto';
import type { z } from 'zod';
import { db } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import { requireBookings } from '@/lib/workshop/require-bookings';
import { hashToken } from './private-link';
import { type BookingStep, type DraftAnswers, draftAnswers, type STEP_SCHEMAS } from './rules/booking';

/** A draft lives this long after its last answer; the sweep removes older ones. */
export const DRAFT_DAYS = 14;

export type Draft = {
  id: string;
  repairId: string;
  answers: DraftAnswers;
  jobId: string | null;
  quoteId: string | null;
};

/** Begins a booking and returns the token that opens it. */
export async function startDraft(o: { repairId: string; now: Date }): Promise<string> {
  requireBookings(await readWorkshop());
  const repair = await db.repair.findUnique({
    where: { id: o.repairId },
    select: { isListed: true, model: { select: { isListed: true } } },
  });
  if (!repair?.isListed || !repair.model.isListed) {
    throw new Refusal('not-found', 'This repair is not on the price list any more.');
  }
  const token = randomBytes(24).toString('base64url');
  await db.bookingDraft.create({
    data: {
      tokenHash: hashToken(token),
      repairId: o.repairId,
      answers: {},
      createdAt: o.now,
      updatedAt: o.now,
    },
  });
  return token;
}

/** The draft a token opens, or null. */
export async function readDraft(token: string): Promise<Draft | null> {
  const row = await db.bookingDraft.findUnique({
    where: { tokenHash: hashToken(token) },
    select: { id: true, repairId: true, answers: true, jobId: true, quoteId: true },
  });
  return row ? { ...row, answers: draftAnswers.parse(row.answers) } : null;
}

type SavedStep = Exclude<BookingStep, 'confirm'>;

/**
 * Keeps one step's answers. Two tabs may save at once: the row is locked, so that each replaces its own step and
 * neither loses the other's.
 */
export async function saveStep<S extends SavedStep>(o: {
  token: string;
  step: S;
  answers: z.output<(typeof STEP_SCHEMAS)[S]>;
  now: Date;
}): Promise<DraftAnswers> {
  return transaction(async (tx) => {
    const tokenHash = hashToken(o.token);
    await tx.$queryRaw`SELECT 1 FROM "booking_draft" WHERE "tokenHash" = ${tokenHash} FOR UPDATE`;
    const row = await tx.bookingDraft.findUnique({
      where: { tokenHash },
      select: { answers: true, jobId: true },
    });
    if (!row) throw new Refusal('not-found', 'This booking was not found. Start again from the price list.');
    if (row.jobId) throw new Refusal('conflict', 'This booking was sent already.');
    const answers = draftAnswers.parse({ ...draftAnswers.parse(row.answers), [o.step]: o.answers });
    await tx.bookingDraft.update({ where: { tokenHash }, data: { answers, updatedAt: o.now } });
    return answers;
  });
}
