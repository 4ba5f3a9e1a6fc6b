import { type Day, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { sameButForCapitals } from '@/lib/db/like';
import { readWorkshop } from '@/lib/workshop/records';

export type AwaitedBooking = { number: string; unit: string; repair: string; bookedOn: Day };

/** Whoever has booked more than this at once is found by number. */
const MOST = 10;

/** Bookings of one address whose parcels have not come, the newest first. */
export async function bookingsOfCustomer(email: string): Promise<AwaitedBooking[]> {
  if (email === '') return [];
  const [rows, { timeZone }] = await Promise.all([
    db.job.findMany({
      where: { stage: 'booked', customer: { email: sameButForCapitals(email) } },
      orderBy: [{ bookedAt: 'desc' }, { id: 'desc' }],
      take: MOST,
      select: {
        number: true,
        bookedAt: true,
        model: { select: { maker: true, name: true } },
        repair: { select: { name: true } },
      },
    }),
    readWorkshop(),
  ]);
  return rows.map(({ number, bookedAt, model, repair }) => ({
    number,
    unit: unitName(model),
    repair: repair.name,
    bookedOn: dayInZone(bookedAt, timeZone),
  }));
}
