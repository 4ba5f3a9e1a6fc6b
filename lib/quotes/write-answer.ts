import { dayInZone } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { issueForJob } from '@/lib/invoices/write-invoice-of-job';
import type { Actor } from '@/lib/jobs/actor';
import type { JobRecord } from '@/lib/jobs/records';
import type { BY_TELLING } from '@/lib/jobs/rules/told';
import type { WorkshopCard } from '@/lib/workshop/records';
import { feesAfterNo } from './rules/after-no';
import { agreedOf } from './rules/agreed';
import { readLinesAfterNo } from './stored-after-no';
import { type StoredRevision, writeOwed } from './write-owed';

type Revision = NonNullable<JobRecord['quotes'][number]>['revisions'][number];

type Answered = {
  jobId: string;
  /** said of the revision */
  decision: 'accepted' | 'declined';
  /** what that came to */
  taken: 'accepted' | 'declined' | 'rest-declined';
  offer: Revision;
  job: JobRecord;
  quote: { id: string; revisions: readonly StoredRevision[] };
  workshop: WorkshopCard;
  agreedText: string;
  /** whose answer it is, and whether it was told */
  by: 'customer' | typeof BY_TELLING;
  actor: Actor;
  now: Date;
};

type NowAgreed = { gross: number; inspectionFee?: number };

/**
 * Decides the revision that was answered, puts what is owed from now in the place of the price agreed before, and gives it. A no to
 * the rest of a claim leaves the agreed price as it is.
 */
export async function writeAnswer(tx: Tx, o: Answered): Promise<NowAgreed> {
  const { taken } = o;
  if (taken !== 'rest-declined') {
    await tx.quoteRevision.updateMany({
      where: { quoteId: o.quote.id, state: 'accepted' },
      data: { state: 'replaced' },
    });
  }
  await tx.quoteRevision.update({
    where: { id: o.offer.id },
    data: { state: o.decision, decidedAt: o.now, decidedBy: o.by, agreedText: o.agreedText },
  });
  const agreed = await nowAgreed(tx, o);
  // An invoice that was issued ahead is credited, and replaced by one over what is owed now.
  if (taken !== 'rest-declined' && o.job.invoices.length > 0) await issueForJob(tx, o);
  return agreed;
}

/** What the customer pays after the answer, with tax, in minor units. */
async function nowAgreed(tx: Tx, o: Answered): Promise<NowAgreed> {
  switch (o.taken) {
    case 'accepted':
      return { gross: o.offer.grossMinor };
    case 'declined':
      return owedOnReturn(tx, o);
    case 'rest-declined': {
      const stands = agreedOf(o.job);
      return { gross: stands?.grossMinor ?? 0 };
    }
  }
}

/** After a no, the agreed price becomes the fees alone; a claim's unit goes back free. */
async function owedOnReturn(tx: Tx, o: Answered): Promise<NowAgreed> {
  const lines = readLinesAfterNo(o.job, o.workshop);
  const { inspectionFee } = feesAfterNo(lines);
  const gross = await writeOwed(tx, {
    quote: o.quote,
    lines,
    reason: 'Returned unrepaired after the changed price was declined',
    agreedText: o.agreedText,
    by: o.by,
    today: dayInZone(o.now, o.workshop.timeZone),
    now: o.now,
  });
  return { gross, ...(inspectionFee > 0 ? { inspectionFee } : {}) };
}
