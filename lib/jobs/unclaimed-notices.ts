import { dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import { isUniqueViolation } from '@/lib/db/errors';
import type { Prisma } from '@/lib/db/generated/client';
import { transaction } from '@/lib/db/transaction';
import { balanceOf } from '@/lib/invoices/rules/balance';
import { attempt } from '@/lib/outcome';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { moveJob } from './move';
import { isOwedWaived } from './rules/decision';
import { isHeldForMoney } from './rules/guards';
import { waitsForAddress } from './rules/handover';
import { UNFETCHED } from './rules/stage-sets';
import { stepOfUnit } from './rules/unclaimed-unit';
import { UNCLAIMED_FACTS } from './stored-unclaimed';
import { writeEvent } from './write-event';
import { writeNotice } from './write-unclaimed';

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
