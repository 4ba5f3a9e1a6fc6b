import { db } from '@/lib/db/client';
import { soughtFrom } from './rules/sought';

export type FoundPlace =
  | { place: 'job'; number: string }
  | { place: 'claim'; number: string }
  | { place: 'quote'; number: string }
  | { place: 'list' };

/** Where one search box leads: a number to its own page, anything else to a list of what was found. */
export async function placeOf(typed: string): Promise<FoundPlace> {
  const sought = soughtFrom(typed);
  if (sought.kind !== 'number') return { place: 'list' };
  const { of, number } = sought;
  if (of === 'C') {
    const claim = await db.claim.findUnique({ where: { number }, select: { number: true } });
    return claim ? { place: 'claim', number: claim.number } : { place: 'list' };
  }
  if (of === 'W') {
    const certificate = await db.certificate.findFirst({
      where: { number },
      orderBy: { revision: 'desc' },
      select: { job: { select: { number: true } } },
    });
    return certificate ? { place: 'job', number: certificate.job.number } : { place: 'list' };
  }
  const job = await db.job.findFirst({
    where: of === 'J' ? { number } : { quotes: { some: { number } } },
    select: { number: true },
  });
  if (!job && of === 'Q') {
    const request = await db.quoteRequest.findFirst({
      where: { quote: { number } },
      select: { quoteId: true },
    });
    if (request) return { place: 'quote', number };
  }
  return job ? { place: 'job', number: job.number } : { place: 'list' };
}
