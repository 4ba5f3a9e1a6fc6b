import { unitName } from '@/lib/catalogue/rules/unit-name';
import { config } from '@/lib/config';
import { db } from '@/lib/db/client';
import type { BagLabelData } from '@/lib/documents/bag-label';

/** Ten sheets full; more bags than that do not wait in a small workshop. */
const MOST_LABELS = 270;

/** What the label of a bag says: its code opens the job sheet, so that a phone and a scanner both find it. */
export function labelOf(job: {
  number: string;
  serialTyped: string;
  model: { maker: string; name: string };
}): BagLabelData {
  return {
    job: job.number,
    code: `${config.appUrl}/workshop/jobs/${job.number}`,
    model: unitName(job.model),
    serial: job.serialTyped,
  };
}

/** Labels of the units that are here and wait to be assessed, in the order in which they came. */
export async function labelsOfArrived(): Promise<BagLabelData[]> {
  const jobs = await db.job.findMany({
    where: { stage: 'arrived' },
    orderBy: [{ arrivedAt: 'asc' }, { number: 'asc' }],
    select: { number: true, serialTyped: true, model: { select: { maker: true, name: true } } },
    take: MOST_LABELS,
  });
  return jobs.map(labelOf);
}
