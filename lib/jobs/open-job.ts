import { addDays, type Day, dayInZone, dayToDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { newNumber } from '@/lib/numbers/draw';
import { foldSerial } from '@/lib/numbers/serial';
import { Refusal } from '@/lib/outcome';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { writeRevision } from '@/lib/quotes/write-revision';
import { type Actor, actorId } from './actor';
import { createLink } from './private-link';
import type { DataAnswer } from './rules/booking';
import { EVENT_DATA } from './rules/events';
import type { JobKind } from './rules/stages';

export type NewJob = JobPart & (NewPrice | AgreedPrice);

type JobPart = {
  /** given where a form sent twice must open one job */
  id?: string | undefined;
  kind: JobKind;
  customerId: string;
  modelId: string;
  repairId: string;
  /** the repair's newest check sheet, where the caller has read it */
  sheetId?: string | undefined;
  serial: string;
  problem: string;
  history: readonly string[];
  batteryAnswer: string;
  dataAnswer: DataAnswer;
  accessories: readonly string[];
  /** absent where nothing is agreed to yet: a claim, and a unit that came without a booking */
  contract?: Contract;
  actor: Actor;
  now: Date;
};

/** What is agreed to by booking, beside the price. */
type Contract = {
  /** the terms of the workshop; null where it has published none */
  termsId: string | null;
  /** the terms of cover */
  policyVersionId: string;
  /** what a return unrepaired costs at most, with tax, minor units */
  returnFeeMinor: number;
  /** null where there is no right to withdraw */
  withdrawal: { until: Day; isStartAsked: boolean } | null;
};

/** A price agreed to by booking: it becomes the first revision of a quote of the job's own. */
type NewPrice = {
  agreed?: never;
  lines: readonly QuoteLine[];
  isGross: boolean;
  isInspectionFeeTakenOff: boolean;
  reason: string;
  agreedText: string;
  /** where it is not the yes of who opens the job */
  decidedBy?: string | undefined;
  currency: string;
  validDays: number;
  timeZone: string;
};

/** A quote that was asked for and accepted before: the job takes it as it is. */
type AgreedPrice = { agreed: { quoteId: string; quoteNumber: string; grossMinor: number } };

export type OpenedJob = { id: string; number: string; token: string; grossMinor: number };

/** Writes a job with its agreed price, its first event and its private link, inside the caller's transaction. */
export async function openJob(tx: Tx, o: NewJob): Promise<OpenedJob> {
  const sheetId = o.sheetId ?? (await newestSheet(tx, o.repairId));
  const isWalkIn = o.kind === 'repair' && o.actor.kind !== 'customer';
  const { withdrawal, ...promised } = o.contract ?? {};
  const quoteNumber = o.agreed?.quoteNumber ?? newNumber('Q');
  const number = newNumber('J');
  // Rows one after the other: written as parts of the job, they would make the client read it again.
  const job = await tx.job.create({
    data: {
      ...(o.id && { id: o.id }),
      number,
      kind: o.kind,
      stage: 'booked',
      customerId: o.customerId,
      modelId: o.modelId,
      repairId: o.repairId,
      sheetId,
      serialTyped: o.serial,
      serialKey: foldSerial(o.serial),
      problem: o.problem,
      history: [...o.history],
      batteryAnswer: o.batteryAnswer,
      dataAnswer: o.dataAnswer,
      ...promised,
      termsAcceptedAt: o.contract ? o.now : null,
      bookedAt: o.now,
      withdrawUntil: withdrawal ? dayToDate(withdrawal.until) : null,
      startRequestedAt: withdrawal?.isStartAsked ? o.now : null,
    },
    select: { id: true },
  });
  if (o.accessories.length > 0)
    await tx.accessory.createMany({
      data: o.accessories.map((name) => ({ jobId: job.id, name, isTold: true })),
    });
  await tx.jobEvent.create({
    data: {
      jobId: job.id,
      version: 1,
      kind: 'booked',
      at: o.now,
      actorKind: o.actor.kind,
      actorId: actorId(o.actor),
      toStage: 'booked',
      data: EVENT_DATA.booked.parse({
        accessories: [...o.accessories],
        quoteNumber,
        ...(isWalkIn && { isWalkIn }),
      }),
    },
    select: { id: true },
  });
  const grossMinor = o.agreed
    ? await takeQuote(tx, job.id, o.agreed)
    : await writePrice(tx, job.id, quoteNumber, o);
  const token = await createLink(tx, job.id, o.now);
  return { id: job.id, number, token, grossMinor };
}

async function newestSheet(tx: Tx, repairId: string): Promise<string> {
  const { id } = await tx.checkSheet.findFirstOrThrow({
    where: { repairId },
    orderBy: { version: 'desc' },
    select: { id: true },
  });
  return id;
}

/** A quote has one job: of two bookings of it at once, the second finds it taken and nothing of it is kept. */
async function takeQuote(tx: Tx, jobId: string, agreed: AgreedPrice['agreed']): Promise<number> {
  const { count } = await tx.quote.updateMany({
    where: { id: agreed.quoteId, jobId: null },
    data: { jobId },
  });
  if (count === 0) throw new Refusal('conflict', 'A repair was booked for this price already.');
  return agreed.grossMinor;
}

async function writePrice(
  tx: Tx,
  jobId: string,
  number: string,
  o: NewPrice & Pick<JobPart, 'actor' | 'now'>,
): Promise<number> {
  const quote = await tx.quote.create({
    data: { number, currency: o.currency, jobId },
    select: { id: true },
  });
  return writeRevision(tx, {
    quoteId: quote.id,
    revision: 1,
    state: 'accepted',
    isGross: o.isGross,
    reason: o.reason,
    onYes: '',
    onNo: '',
    now: o.now,
    validUntil: addDays(dayInZone(o.now, o.timeZone), o.validDays),
    lines: o.lines,
    conditions: { isInspectionFeeTakenOff: o.isInspectionFeeTakenOff },
    decided: { at: o.now, by: o.decidedBy ?? o.actor.kind, agreedText: o.agreedText },
  });
}
