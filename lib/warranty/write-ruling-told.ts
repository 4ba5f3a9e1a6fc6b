import { writeBesides } from '@/lib/bench/write-besides';
import type { Tx } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { queueMail } from '@/lib/mail/queue';
import { agreedGross, makeFreeAgain } from './free-again';
import type { Cause, Ruling } from './rules/causes';
import { afterCover, mayContest } from './rules/ruling';
import { writeClaimedBesides } from './write-claimed-besides';
import { writeOwnRepair } from './write-own-repair';

/** What a ruling has to know of the claim's job. */
export const RULED_JOB = {
  stage: true,
  isSerialSettled: true,
  customer: { select: { email: true } },
  events: { orderBy: { version: 'asc' }, select: { kind: true, data: true, fromStage: true, toStage: true } },
} as const;

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
  await writeClaimedBesides(tx, o);
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
