import { type Day, dayInZone, maxDay } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { isUniqueViolation } from '@/lib/db/errors';
import type { Prisma } from '@/lib/db/generated/client';
import { transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { attempt } from '@/lib/outcome';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { moveJob } from './move';
import { parseEvent } from './rules/events';
import { isHeldForMoney } from './rules/guards';
import { waitsForAddress } from './rules/handover';
import { UNFETCHED } from './rules/stage-sets';
import { type UnclaimedStep, unclaimedStep } from './rules/unclaimed';
import { ADDRESS_EVENTS, isOwedWaived, lastDecision } from './stored-decision';
import { writeEvent } from './write-event';
import { unclaimedSettings, writeNotice } from './write-unclaimed';

/** What must be known of a job to say whether a notice is due. */
export const UNCLAIMED_FACTS = {
  stage: true,
  events: {
    ...ADDRESS_EVENTS,
    where: { OR: [...ADDRESS_EVENTS.where.OR, { kind: 'payment-recorded' }] },
  },
  mails: {
    where: { template: { in: ['unit-ready', 'parcel-came-back', 'dispatch-undone', 'unclaimed-notice'] } },
    orderBy: [{ queuedAt: 'desc' }, { id: 'desc' }],
    select: { template: true, state: true, sentAt: true, bouncedAt: true },
  },
  unclaimedNotices: { orderBy: { notice: 'asc' }, select: { at: true } },
} satisfies Prisma.JobSelect;

type Facts = Prisma.JobGetPayload<{ select: typeof UNCLAIMED_FACTS }>;

/**
 * What is due about one unit. Told is somebody whose newest letter that the unit is ready, that its parcel came back or that it is here after all, has
 * left and was not returned; the time runs from the latest of that, the last time it became ready and the last time its
 * customer was heard: nobody is told that they were silent who wrote or paid the day before.
 */
export function stepOfUnit(job: Facts, workshop: WorkshopCard, today: Day): UnclaimedStep {
  const dayOf = (at: Date) => dayInZone(at, workshop.timeZone);
  const ready = job.events.findLast((event) => event.toStage === 'ready');
  const letter = newestTold(job);
  return unclaimedStep(
    {
      toldOn:
        ready && letter?.sentAt ? latestDay([letter.sentAt, ready.at, heardAt(job.events)], dayOf) : null,
      sentOn: job.unclaimedNotices.map(({ at }) => dayOf(at)),
      keptUntil: lastDecision(job.events)?.until ?? null,
    },
    unclaimedSettings(workshop),
    today,
  );
}

function latestDay(instants: readonly (Date | null)[], dayOf: (at: Date) => Day): Day | null {
  return instants
    .flatMap((at) => (at === null ? [] : [dayOf(at)]))
    .reduce<Day | null>((latest, on) => (latest === null ? on : maxDay(latest, on)), null);
}

/** When the customer last wrote or paid. */
function heardAt(events: Facts['events']): Date | null {
  return events.findLast(isHeard)?.at ?? null;
}

function isHeard({ kind, data }: Facts['events'][number]): boolean {
  if (kind !== 'message-sent' && kind !== 'payment-recorded') return false;
  const event = parseEvent(kind, data);
  return event.kind === 'message-sent'
    ? event.data.author === 'customer'
    : event.kind === 'payment-recorded' && event.data.amount > 0;
}

/** What became of the newest notice's letter. */
export type NoticeMail = 'reached' | 'came-back' | 'not-left';

export function noticeMail({ mails }: Pick<Facts, 'mails'>): NoticeMail {
  const newest = mails.find((mail) => mail.template === 'unclaimed-notice');
  if (newest?.bouncedAt) return 'came-back';
  return newest?.state === 'sent' ? 'reached' : 'not-left';
}

/** The newest letter that the unit waits here, null unless it has left and was not returned. */
function newestTold({ mails }: Pick<Facts, 'mails'>) {
  const newest = mails.find((mail) => mail.template !== 'unclaimed-notice');
  return newest?.state === 'sent' && !newest.bouncedAt ? newest : null;
}

const CANDIDATE = {
  ...UNCLAIMED_FACTS,
  id: true,
  version: true,
  customer: { select: { email: true } },
  payments: { select: { amountMinor: true, purpose: true } },
  invoices: { select: { kind: true, payableMinor: true } },
  quotes: {
    select: {
      revisions: {
        where: { state: { in: ['sent', 'accepted'] } },
        select: { state: true, grossMinor: true },
      },
    },
  },
} satisfies Prisma.JobSelect;
type Candidate = Prisma.JobGetPayload<{ select: typeof CANDIDATE }>;

/** So many units a round at most, so that a round stays short; the next one goes on. */
const MOST = 200;

/**
 * Sends every notice that is due, by the clock. A unit that is ready and paid waits on the workshop, and gets none,
 * unless its parcel came back and its customer was asked for an address. The
 * first notice sets the unit aside. Returns how many were sent.
 */
export async function sendUnclaimedNotices(now: Date): Promise<number> {
  const workshop = await readWorkshop();
  const today = dayInZone(now, workshop.timeZone);
  const jobs = await db.job.findMany({
    where: { stage: { in: [...UNFETCHED] }, customer: { erasedAt: null } },
    select: CANDIDATE,
    orderBy: { readyAt: 'asc' },
    take: MOST,
  });
  let sent = 0;
  for (const job of jobs) {
    if (job.stage === 'ready' && !waitsForMoney(job) && !waitsForAddress(job.events)) continue;
    const due = stepOfUnit(job, workshop, today);
    if (due.step === 'notice' && (await sendNotice(job, due.notice, { workshop, now }))) sent += 1;
  }
  return sent;
}

function waitsForMoney(job: Candidate): boolean {
  return isHeldForMoney({ owed: balanceOf(job).owed, isOwedWaived: isOwedWaived(job.events) });
}

/** False where another instance, or a person, was quicker. */
async function sendNotice(
  job: Candidate,
  notice: number,
  o: { workshop: WorkshopCard; now: Date },
): Promise<boolean> {
  const actor = { kind: 'clock' } as const;
  if (job.stage === 'ready') {
    const note = 'Ready and not answered about; the first notice was sent';
    const moved = await attempt(() =>
      moveJob({ jobId: job.id, version: job.version, move: 'set-aside', note, actor, now: o.now }),
    );
    return moved.ok;
  }
  try {
    const done = await attempt(() =>
      transaction(async (tx) => {
        const written = await writeNotice(tx, { jobId: job.id, email: job.customer.email, notice, ...o });
        await writeEvent(tx, {
          jobId: job.id,
          actor,
          now: o.now,
          expected: { stages: ['unclaimed'] },
          event: { kind: 'unclaimed-notice', data: written },
        });
      }),
    );
    return done.ok;
  } catch (error) {
    if (isUniqueViolation(error, 'unclaimed_notice_pkey')) return false;
    throw error;
  }
}
