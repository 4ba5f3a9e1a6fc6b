import { writeBesides } from '@/lib/bench/write-besides';
import { dayInZone } from '@/lib/calendar/day';
import { type Tx, transaction } from '@/lib/db/transaction';
import { queueMail } from '@/lib/mail/queue';
import { formatMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { requestMove } from '@/lib/quotes/rules/request-states';
import { readWithdrawalRule, withdrawUntil } from '@/lib/quotes/rules/withdrawal';
import { writeQuoteEvent } from '@/lib/quotes/write-quote-event';
import { readCalendar, readHeldWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { requireBookings } from '@/lib/workshop/require-bookings';
import { termsId } from '@/lib/workshop/terms-id';
import { keepTerms } from '@/lib/workshop/write-terms';
import { bookedPrice } from './booked-price';
import { openJob } from './open-job';
import { hashToken, newestToken } from './private-link';
import { draftAnswers, fullAnswers, toldAccessories } from './rules/booking';
import { postedAnswer } from './rules/posted-answer';
import { changedTerms, type ShownTerms } from './rules/shown-terms';
import { recalledCellsOf } from './stored-recall';
import { writeCustomer } from './write-customer';

const CUSTOMER = { kind: 'customer' } as const;

export type Booked = { number: string; token: string; isNew: boolean };

/**
 * Turns a finished draft into a job, with its agreed price, private link, first event and mail. Where the customer has a
 * right to withdraw, its last day is kept, and whether they asked for work to start before.
 *
 * The confirm button may be pressed twice, or the answer lost on the way back: the draft's row is locked, so that the
 * second press finds the job the first one made and shows it instead of booking again.
 */
export async function book(o: {
  draftToken: string;
  /** the price above the button, with tax, minor units; another one is a conflict */
  shownMinor: number;
  /** the other terms above it; absent where nobody read a page */
  shownTerms?: ShownTerms;
  /** asked for with the words of startRequestWords; never taken for granted */
  isStartAsked?: boolean;
  now: Date;
}): Promise<Booked> {
  return transaction(async (tx) => {
    const draft = await lockDraft(tx, hashToken(o.draftToken));
    if (!draft)
      throw new Refusal('not-found', 'This booking was not found. Start again from the price list.');
    if (draft.jobId) return bookedBefore(tx, draft.jobId);

    const answers = fullAnswers(draftAnswers.parse(draft.answers));
    if (!answers) throw new Refusal('invalid', 'Some answers are still missing.');
    const workshop = await readHeldWorkshop(tx);
    requireBookings(workshop);
    const repair = await tx.repair.findUniqueOrThrow({
      where: { id: draft.repairId },
      select: {
        id: true,
        modelId: true,
        name: true,
        priceMinor: true,
        taxCategory: true,
        taxRateBps: true,
        isListed: true,
        model: true,
        policy: { select: { versions: { orderBy: { version: 'desc' }, take: 1, select: { id: true } } } },
        sheets: { orderBy: { version: 'desc' }, take: 1, select: { id: true } },
      },
    });
    const cells = await recalledCellsOf({ modelId: repair.modelId, serial: answers.unit.serial }, tx);
    if (postedAnswer(repair.model, answers.parcel.battery, cells).may === 'do-not-post') {
      throw new Refusal('invalid', 'This unit must not be posted.', 'battery');
    }

    const { price, promised } = await bookedPrice(tx, {
      repair,
      quoteId: draft.quoteId,
      workshop,
      shownMinor: o.shownMinor,
    });
    const terms = { ...promised, termsId: termsId(workshop.termsText) };
    requireShown(o.shownTerms ?? terms, terms, workshop);
    const customer = await writeCustomer(tx, answers.address, o.now);
    const job = await openJob(tx, {
      kind: 'repair',
      customerId: customer.id,
      modelId: repair.modelId,
      repairId: repair.id,
      sheetId: repair.sheets[0]?.id,
      serial: answers.unit.serial,
      problem: answers.problem.problem,
      history: answers.problem.history,
      batteryAnswer: answers.parcel.battery,
      dataAnswer: answers.parcel.data,
      accessories: toldAccessories(answers.parcel),
      ...price,
      contract: {
        ...promised,
        termsId: await keepTerms(tx, workshop, o.now),
        withdrawal: await withdrawalOf(tx, workshop, o),
      },
      actor: CUSTOMER,
      now: o.now,
    });
    if (draft.quoteId) {
      await writeBesides(tx, { jobId: job.id, actor: CUSTOMER, now: o.now });
      const { from, to } = requestMove('book');
      await writeQuoteEvent(tx, {
        quoteId: draft.quoteId,
        actor: CUSTOMER,
        now: o.now,
        event: { kind: 'booked', data: { jobNumber: job.number } },
        expected: { states: from },
        to,
      });
    }
    await tx.bookingDraft.update({
      where: { id: draft.id },
      data: { jobId: job.id, updatedAt: o.now },
      select: { id: true },
    });
    await queueMail(tx, {
      template: 'job-booked',
      data: {},
      to: answers.address.email,
      jobId: job.id,
      now: o.now,
    });
    return { number: job.number, token: job.token, isNew: true };
  });
}

function requireShown(shown: ShownTerms, now: ShownTerms, workshop: WorkshopCard): void {
  const changed = changedTerms(shown, now, (minor) => formatMoney(minor, workshop.currency, workshop.locale));
  if (changed)
    throw new Refusal(
      'conflict',
      `${changed} Nothing is booked yet. Your answers are kept: press the button once more if you agree.`,
    );
}

type Draft = {
  id: string;
  answers: unknown;
  repairId: string;
  quoteId: string | null;
  jobId: string | null;
};

/** The draft as whoever held its row before has left it; nobody else books it until this transaction ends. */
async function lockDraft(tx: Tx, tokenHash: string): Promise<Draft | undefined> {
  const [draft] = await tx.$queryRaw<Draft[]>`
    SELECT "id", "answers", "repairId", "quoteId", "jobId" FROM "booking_draft"
    WHERE "tokenHash" = ${tokenHash} FOR UPDATE`;
  return draft;
}

async function bookedBefore(tx: Tx, jobId: string): Promise<Booked> {
  const { number } = await tx.job.findUniqueOrThrow({ where: { id: jobId }, select: { number: true } });
  const token = await newestToken(tx, jobId);
  if (!token) throw new Refusal('not-found', 'This booking was sent, and its private link was withdrawn.');
  return { number, token, isNew: false };
}

/** The last day to withdraw from a contract made now; null where the workshop's rule gives no such right. */
async function withdrawalOf(tx: Tx, workshop: WorkshopCard, o: { isStartAsked?: boolean; now: Date }) {
  const today = dayInZone(o.now, workshop.timeZone);
  const rule = readWithdrawalRule(workshop.withdrawalRule);
  const until = withdrawUntil(today, rule, await readCalendar(workshop, today, tx));
  return until && { until, isStartAsked: o.isStartAsked === true };
}
