import { Notice } from '@/app/ui/page/notice';
import type { WorkshopCard } from '@/lib/workshop/card';
import { NO_BOOKINGS } from '@/lib/workshop/require-bookings';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';

/** Stands where a customer would book while the workshop has no address to post to; nothing once it has one. */
export function NoBookings({ workshop }: { workshop: WorkshopCard }) {
  if (takesBookings(workshop)) return null;
  return (
    <Notice kind="note" heading={NO_BOOKINGS}>
      <p>It is still being set up. Please do not post anything yet, and come back later.</p>
    </Notice>
  );
}
