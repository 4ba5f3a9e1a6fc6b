import type { Tx } from '@/lib/db/transaction';
import { creditStanding } from '@/lib/invoices/write-credit';
import type { Actor } from '@/lib/jobs/actor';
import { showNumber } from '@/lib/numbers/job-number';
import { splitCovered } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import type { Ruling } from './rules/causes';

/** Why a price is credited, as the paper of it says after the claim's number. */
const WHY_FREE = {
  covered: 'is covered after all',
  partly: 'is partly covered after all',
  'returned-free': 'was looked at again: no fault found, and nothing to pay',
} as const satisfies Partial<Record<Ruling, string>>;

/**
 * Puts the price a claim began with, nothing, in force again, inside the transaction of a ruling for the customer. They may
 * have agreed to pay after the ruling that they contested: that price is off, and what was invoiced for it is credited.
 * What they paid already shows as money to give back. A claim that is partly covered leaves a price for the rest as agreed:
 * what the certificate covers is free in it already.
 */
export async function makeFreeAgain(
  tx: Tx,
  o: { jobId: string; claim: string; ruling: keyof typeof WHY_FREE; actor: Actor; now: Date },
): Promise<void> {
  const agreed = await tx.quoteRevision.findFirst({
    where: { quote: { jobId: o.jobId }, state: 'accepted', revision: { gt: 1 } },
    select: { id: true, quoteId: true, lines: { orderBy: { position: 'asc' } } },
  });
  if (!agreed) return;
  if (o.ruling === 'partly' && splitCovered(agreed.lines.map(readLine)).covered.length > 0) return;
  await tx.quoteRevision.update({ where: { id: agreed.id }, data: { state: 'replaced' } });
  await tx.quoteRevision.updateMany({
    where: { quoteId: agreed.quoteId, revision: 1 },
    data: { state: 'accepted' },
  });
  await creditStanding(tx, { ...o, reason: `Claim ${showNumber(o.claim)} ${WHY_FREE[o.ruling]}` });
}

/** The price with tax, minor units, that stands on a claim's job because its customer agreed to pay it; nothing where none does. */
export async function agreedGross(tx: Tx, jobId: string): Promise<{ agreedGross?: number }> {
  const agreed = await tx.quoteRevision.findFirst({
    where: {
      quote: { jobId, job: { withdrawnAt: null } },
      state: 'accepted',
      revision: { gt: 1 },
      grossMinor: { gt: 0 },
    },
    select: { grossMinor: true },
  });
  return agreed ? { agreedGross: agreed.grossMinor } : {};
}
