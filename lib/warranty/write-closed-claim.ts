import { minutesOf } from '@/lib/bench/rules/minutes-by';
import type { Tx } from '@/lib/db/transaction';
import { isForPrice } from '@/lib/invoices/rules/balance';
import type { JobRecord } from '@/lib/jobs/records';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { revisionTotals, splitCovered } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { writeWatch } from '@/lib/returns/write-watch';
import { readWorkshop } from '@/lib/workshop/records';
import { ownPart } from './rules/claim-cost';
import { postageAfterPayment } from './rules/postage';

/**
 * Ends the claim that a job works on, with what it cost in minor units: the minutes and parts recorded on the job less what the
 * customer paid for beside the covered part, the postage of the way back, and the customer's own that was paid back. Without
 * it the certificate could not be claimed from again. Nothing for a job without a claim; one that is closed already, whose unit
 * leaves for the second time, only costs the postage more.
 */
export async function closeClaim(tx: Tx, job: JobRecord, o: { postage: number; now: Date }): Promise<void> {
  if (!job.claim) return;
  if (job.claim.state === 'closed') {
    await tx.claim.update({
      where: { id: job.claim.id },
      data: { costPostageMinor: (job.claim.costPostageMinor ?? 0) + o.postage },
    });
    return;
  }
  const { labourRateMinor } = await readWorkshop(tx);
  const own = ownPart({
    minutes: minutesOf(job.work),
    parts: job.partUses.reduce((sum, use) => sum + use.quantity * use.unitCostMinor, 0),
    paidNet: paidNet(job),
    labourRateMinor,
  });
  await tx.claim.update({
    where: { id: job.claim.id },
    data: {
      state: 'closed',
      closedAt: o.now,
      costMinutes: own.minutes,
      costPartsMinor: own.parts,
      costPostageMinor: o.postage + paidBack(job),
    },
  });
}

/** What the customer pays for before tax: beside the covered part, or all of it where nothing is covered. */
function paidNet(job: JobRecord): number {
  const agreed = agreedOf(job);
  if (!agreed) return 0;
  const { paid } = splitCovered(agreed.lines.map(readLine));
  return Math.max(0, revisionTotals(paid, agreed.isGross).net);
}

/** What the customer's own postage was paid back with, minor units. */
export function paidBack(job: { payments: readonly { amountMinor: number; purpose: string }[] }): number {
  return -job.payments
    .filter((payment) => !isForPrice(payment))
    .reduce((sum, payment) => sum + payment.amountMinor, 0);
}

/**
 * Keeps that the customer's postage was paid back, which ends their asking for it once all of it was, and adds it to what the claim
 * cost; one that is still open counts it when it ends. Returns what is left of the sum asked for. Minor units, `postage` below zero
 * where an entry is corrected; `paid` is all that was paid back, this entry with it.
 */
export async function writePostageOfClaim(
  tx: Tx,
  o: { jobId: string; postage: number; paid: number },
): Promise<number> {
  const before = await tx.claim.findUniqueOrThrow({
    where: { jobId: o.jobId },
    select: { postageState: true, postageMinor: true },
  });
  const { state, left } = postageAfterPayment({
    state: before.postageState,
    asked: before.postageMinor,
    paid: o.paid,
  });
  await tx.claim.update({ where: { jobId: o.jobId }, data: { postageState: state } });
  const [claim] = await tx.claim.updateManyAndReturn({
    where: { jobId: o.jobId, costPostageMinor: { not: null } },
    data: { costPostageMinor: { increment: o.postage } },
    select: { certificateNumber: true },
  });
  if (claim) await writeWatch(tx, [claim.certificateNumber]);
  return left;
}
