import { writeBesides } from '@/lib/bench/write-besides';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { readStage } from '@/lib/jobs/records';
import { isRepaired } from '@/lib/jobs/rules/repaired';
import { moveOf } from '@/lib/jobs/rules/stages';
import { queueMail } from '@/lib/mail/queue';
import { agreedGross, makeFreeAgain } from './free-again';
import type { Cause, Ruling } from './rules/causes';
import { afterCover, isCoveredAtLeastPartly, mayContest } from './rules/ruling';
import { writeOwnRepair } from './write-own-repair';

/** What a ruling has to know of the claim's job. */
export const RULED_JOB = {
  stage: true,
  isSerialSettled: true,
  customer: { select: { email: true } },
  events: { orderBy: { version: 'asc' }, select: { fromStage: true, toStage: true } },
} as const;

type Moved = { stage: string; events: Parameters<typeof isRepaired>[0] };

/**
 * What a ruling that covers something changes on a job whose unit is on its way back unrepaired: it is taken up again. Only a
 * customer who contested a ruling and then withdrew from a paid repair leaves a claim to be ruled on there.
 */
export function repairAfterAll({ stage, events }: Moved, ruling: Ruling) {
  if (!isCoveredAtLeastPartly(ruling)) return {};
  const from = readStage(stage);
  const { from: stages, to } = moveOf('repair-after-all');
  // A price for the rest can be agreed to, and withdrawn from, anew.
  const set = { withdrawnAt: null };
  return stages.includes(from) && !isRepaired(events)
    ? { from, to, set: { ...set, readyAt: null } }
    : { set };
}

/** What a ruling does once it is final, inside its transaction: prices that it makes free, and the customer's mail. */
export async function tellRuling(
  tx: Tx,
  o: {
    jobId: string;
    /** of the claim */
    number: string;
    certificateNumber: string;
    ruling: Ruling;
    cause: Cause;
    isLetIn: boolean | null;
    reasonText: string;
    contestedAt: Date | null;
    job: { customer: { email: string } };
    actor: Actor;
    now: Date;
  },
): Promise<void> {
  const { jobId, ruling, cause, now } = o;
  await writeOwnRepair(tx, o);
  if (ruling !== 'not-covered') await makeFreeAgain(tx, { ...o, claim: o.number, ruling });
  await writeBesides(tx, o);
  const after = afterCover(o);
  await queueMail(tx, {
    template: 'claim-ruled',
    data: {
      claimNumber: o.number,
      ruling,
      cause,
      reasonText: o.reasonText,
      mayContest: mayContest({ ruling, timesContested: o.contestedAt ? 1 : 0 }).allowed,
      ...(after && { afterCover: after }),
      ...(await agreedGross(tx, jobId)),
    },
    to: o.job.customer.email,
    jobId,
    now,
  });
}
