import { addDays, dayInZone } from '@/lib/calendar/day';
import { transaction } from '@/lib/db/transaction';
import type { Actor } from '@/lib/jobs/actor';
import { writeEvent } from '@/lib/jobs/write-event';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';
import type { QuoteLine } from './rules/lines';
import { writeRevision } from './write-revision';

/**
 * Writes a changed price as the next revision of the job's quote. It is not sent yet: asking for approval is its own
 * move. An offer that was written and not answered is replaced, so that only one is ever open.
 */
export async function writeOffer(o: {
  jobId: string;
  version: number;
  lines: readonly QuoteLine[];
  reason: string;
  onYes: string;
  onNo: string;
  actor: Extract<Actor, { id: string }>;
  now: Date;
}): Promise<{ revision: number; gross: number }> {
  return transaction(async (tx) => {
    const quote = await tx.quote.findUnique({
      where: { jobId: o.jobId },
      select: { id: true, revisions: { select: { revision: true } } },
    });
    if (!quote) throw new Refusal('not-found', 'There is no such job.');
    const workshop = await readWorkshop(tx);
    const revision = 1 + Math.max(0, ...quote.revisions.map((each) => each.revision));
    await tx.quoteRevision.updateMany({
      where: { quoteId: quote.id, state: 'sent' },
      data: { state: 'replaced' },
    });
    const gross = await writeRevision(tx, {
      quoteId: quote.id,
      revision,
      state: 'sent',
      isGross: workshop.pricesIncludeTax,
      reason: o.reason,
      onYes: o.onYes,
      onNo: o.onNo,
      now: o.now,
      validUntil: addDays(dayInZone(o.now, workshop.timeZone), workshop.approvalDays),
      lines: o.lines,
    });
    await writeEvent(tx, {
      jobId: o.jobId,
      actor: o.actor,
      now: o.now,
      expected: { version: o.version, stages: ['assessing', 'on-bench'] },
      event: { kind: 'offer-written', data: { revision, gross } },
    });
    return { revision, gross };
  });
}
