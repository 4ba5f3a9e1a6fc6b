import { customerPrice } from '@/lib/catalogue/rules/price';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { agreedRevision, readQuote } from '@/lib/quotes/records';
import { inspectionFeeOf } from '@/lib/quotes/rules/after-no';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { type ShownPrice, shownPrice } from '@/lib/quotes/rules/shown-price';
import { readConditions } from '@/lib/quotes/stored-conditions';
import { readLine, taxCategory } from '@/lib/quotes/stored-lines';
import { newestVersion } from '@/lib/warranty/records';
import { readWorkshop } from '@/lib/workshop/records';

const OFFER = {
  id: true,
  name: true,
  summary: true,
  priceMinor: true,
  taxCategory: true,
  taxRateBps: true,
  workingDays: true,
  isListed: true,
  model: true,
  policy: { select: { versions: { orderBy: { version: 'desc' }, take: 1 } } },
} satisfies Prisma.RepairSelect;

export type BookingRepair = Omit<OfferedRepair, 'policy'> & {
  /** the terms of cover it is booked under */
  terms: OfferedRepair['policy']['versions'][number];
  /** the most that a return unrepaired costs, with tax, minor units */
  returnFeeMinor: number;
  /** what the customer pays with tax, minor units */
  grossMinor: number;
  /** the accepted quote this booking is for; null when it is booked from the price list */
  quote: BookedQuote | null;
};

export type BookedQuote = {
  number: string;
  proposal: string;
  price: ShownPrice;
  /** of those lines, with tax; owed even after a no to more */
  inspectionFee: number;
  /** the quote is for finding the fault alone */
  isInspection: boolean;
  known: { name: string; email: string; phone: string };
};

/**
 * The repair a booking is for, with its model and the newest terms of its policy; null when it is not offered. Under an
 * accepted quote it need not be on the price list, and the price, the time, the terms and the return fee are the agreed ones.
 */
export async function readBookingRepair(
  id: string,
  quoteId: string | null = null,
): Promise<BookingRepair | null> {
  const repair = await db.repair.findUnique({ where: { id }, select: OFFER });
  if (!repair) return null;
  if (quoteId !== null) return underQuote(repair, quoteId);
  if (!repair.isListed || !repair.model.isListed) return null;
  const { pricesIncludeTax, returnFeeMinor } = await readWorkshop();
  const { policy, ...rest } = repair;
  const priced = { ...repair, taxCategory: taxCategory.parse(repair.taxCategory) };
  return {
    ...rest,
    terms: newestVersion(policy),
    returnFeeMinor,
    grossMinor: customerPrice(priced, pricesIncludeTax).gross,
    quote: null,
  };
}

type OfferedRepair = Prisma.RepairGetPayload<{ select: typeof OFFER }>;

async function underQuote(
  { policy: _, ...repair }: OfferedRepair,
  quoteId: string,
): Promise<BookingRepair | null> {
  const quote = await readQuote({ id: quoteId });
  const agreed = quote && agreedRevision(quote);
  if (!quote || !agreed?.policyVersion) return null;
  const { name, email, phone } = quote.request;
  const lines = agreed.lines.map(readLine);
  return {
    ...repair,
    terms: agreed.policyVersion,
    returnFeeMinor: readConditions(agreed).returnFeeMinor,
    workingDays: agreed.workingDays ?? repair.workingDays,
    grossMinor: agreed.grossMinor,
    quote: {
      number: quote.number,
      proposal: agreed.proposal,
      price: shownPrice({ ...agreed, lines }, (await readWorkshop()).taxName),
      inspectionFee: inspectionFeeOf(lines, agreed.isGross),
      isInspection: isInspectionOnly(agreed),
      known: { name, email, phone },
    },
  };
}
