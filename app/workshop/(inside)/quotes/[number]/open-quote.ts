import 'server-only';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { requireStaff, type Staff } from '@/app/workshop/who';
import { staffNames } from '@/lib/jobs/records';
import type { Permission } from '@/lib/people/rules/roles';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import type { QuoteRecord } from '@/lib/quotes/records';
import type { WorkshopCard } from '@/lib/workshop/card';

export type QuotePartProps = {
  quote: QuoteRecord;
  workshop: WorkshopCard;
  staff: ReadonlyMap<string, { name: string; initials: string }>;
};

/** The quote of a page for a signed-in person, with this permission where one is named, or the not-found page. */
export async function openQuote(
  number: string,
  needed?: Permission,
): Promise<QuotePartProps & { who: Staff }> {
  const who = await requireStaff(needed);
  const quote = await quoteByNumber(number);
  if (!quote) nothingHere();
  const [workshop, staff] = await Promise.all([readWorkshop(), staffNames()]);
  return { quote, workshop, staff, who };
}
