import { recordFinding } from '@/lib/jobs/record-finding';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { writeOffer } from '@/lib/quotes/write-offer';
import { takeMove, versionOf } from './course';
import { BENCH } from './workshop';

export const PAD: QuoteLine = {
  kind: 'labour',
  description: 'Pad rebuilt',
  amount: 9600,
  category: 'S',
  rateBps: 2000,
};

/** Writes a changed price on a job that is being assessed or on the bench. */
export async function writePrice(
  jobId: string,
  now: Date,
  over: { lines?: QuoteLine[]; furtherDays?: number; repairId?: string } = {},
) {
  return writeOffer({
    jobId,
    version: await versionOf(jobId),
    lines: [PAD],
    reason: 'A pad is lifted.',
    onYes: '',
    onNo: '',
    actor: BENCH,
    now,
    ...over,
  });
}

/** Records a finding, writes a changed price and asks the customer for it; gives its revision. */
export async function askPrice(
  jobId: string,
  now: Date,
  over: { lines?: QuoteLine[]; furtherDays?: number; repairId?: string } = {},
) {
  await recordFinding({ jobId, text: 'Pad lifted', photos: [], actor: BENCH, now });
  const { revision } = await writePrice(jobId, now, over);
  await takeMove(jobId, 'ask-approval', now);
  return revision;
}
