import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';

const OFFER = {
  id: true,
  name: true,
  summary: true,
  priceMinor: true,
  workingDays: true,
  isListed: true,
  model: true,
  policy: { select: { versions: { orderBy: { version: 'desc' }, take: 1 } } },
} satisfies Prisma.RepairSelect;

export type BookingRepair = Prisma.RepairGetPayload<{ select: typeof OFFER }>;

/** The repair a booking is for, with its model and the newest terms of its policy; null when it is not offered. */
export async function readBookingRepair(id: string): Promise<BookingRepair | null> {
  const repair = await db.repair.findUnique({ where: { id }, select: OFFER });
  return repair?.isListed && repair.model.isListed ? repair : null;
}
