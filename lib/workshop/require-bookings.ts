import { Refusal } from '@/lib/outcome';
import { missingSettings, missingWords, type ToldSettings, takesBookings } from './rules/missing-settings';

/** What a customer reads in place of a way to book. */
export const NO_BOOKINGS = 'This workshop takes no bookings yet.';

/** Refuses a customer's booking while the workshop has no name or address to post to. */
export function requireBookings(workshop: ToldSettings): void {
  if (!takesBookings(workshop)) {
    throw new Refusal('conflict', `${NO_BOOKINGS} Nothing is booked. Please do not post the unit.`);
  }
}

/** The same for staff, who can do something about it. */
export function requireBookingsAtDesk(workshop: ToldSettings): void {
  const missing = missingSettings(workshop, 'booking');
  if (missing.length === 0) return;
  throw new Refusal(
    'conflict',
    `No job can be opened yet. Missing under Settings, Details: ${missingWords(missing)}. The owner fills it in.`,
  );
}
