import { TAX_WORDS } from '@/app/workshop/(inside)/catalogue/words';
import { taxRatesInUse } from '@/lib/catalogue/staff-records';
import type { JobRecord } from '@/lib/jobs/records';
import { showRate } from '@/lib/money/rate';
import type { TaxCategory } from '@/lib/money/tax';
import { readLine } from '@/lib/quotes/stored-lines';

export type Tax = { category: TaxCategory; rateBps: number };

/** One tax as the value of a choice: 'S2000'. */
export function taxValue({ category, rateBps }: Tax): string {
  return `${category}${rateBps}`;
}

/** What a choice says: '20%', or the words of a category without a rate. */
export function taxLabel({ category, rateBps }: Tax): string {
  return category === 'S' ? showRate(rateBps) : TAX_WORDS[category];
}

/**
 * The taxes a line of a job's price may carry: that of its repair first, then others its prices carry, then those of the
 * catalogue.
 */
export async function taxesFor(job: JobRecord): Promise<[Tax, ...Tax[]]> {
  const own = job.quotes[0]?.revisions.flatMap((revision) => revision.lines.map(readLine)) ?? [];
  const known = new Map<string, Tax>();
  for (const { category, rateBps } of [...own, ...(await taxRatesInUse())]) {
    known.set(taxValue({ category, rateBps }), { category, rateBps });
  }
  const [usual, ...others] = known.values();
  if (!usual) throw new Error('a job without a price has no tax');
  return [usual, ...others];
}
