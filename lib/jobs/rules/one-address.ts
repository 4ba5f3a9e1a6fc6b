import { emailKey } from '@/lib/quotes/rules/request-answers';

/** Whether two jobs are of one customer, as far as their addresses tell: the same but for capitals. A removed one is nobody's. */
export function isOneAddress(first: string, second: string): boolean {
  const key = emailKey(first);
  return key !== '' && key === emailKey(second);
}

/** Why the parcel of an opened job is not taken in under a booking of another address, and which way to go. */
export const OTHER_ADDRESS =
  'The job that was opened for this parcel has another e-mail address than this booking, and its messages and photos are shown to nobody else. If the booking is not theirs, find the right one. If both are of one customer, put the wrong address right under “Correct the contact” first, then take the parcel in here.';
