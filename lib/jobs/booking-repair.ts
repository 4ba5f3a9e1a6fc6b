import { customerPrice } from '@/lib/catalogue/rules/price';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { taxCategory } from '@/lib/quotes/stored-lines';
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

export type BookingRepair = Prisma.RepairGetPayload<{ select: typeof OFFER }> & {
  /** what the customer pays with tax, minor units */
  grossMinor: number;
};

/** The repair a booking is for, with its model and the newest terms of its policy; null when it is not offered. */
export async function readBookingRepair(id: string): Promise<BookingRepair | null> {
  const repair = await db.repair.findUnique({ where: { id }, select: OFFER });
  if (!repair?.isListed || !repair.model.isListed) return null;
  const { pricesIncludeTax } = await readWorkshop();
  const priced = { ...repair, taxCategory: taxCategory.parse(repair.taxCategory) };
  return { ...repair, grossMinor: customerPrice(priced, pricesIncludeTax).gross };
}
