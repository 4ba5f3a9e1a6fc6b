import { formatInstant } from '@/lib/calendar/format';

/** What is known of the customer having opened the private page since a message was written. */
export function readWords(readAt: Date | null, clock: { locale: string; zone: string }): string {
  return readAt ? `read on ${formatInstant(readAt, clock)}` : 'not read yet on the private page';
}
