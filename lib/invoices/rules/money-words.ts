import { REFUND_DAYS } from './owed-back';

/** backSentence('£12.00') -> 'We give £12.00 back the way it came, within 14 days.' */
export function backSentence(amount: string): string {
  return `We give ${amount} back the way it came, within ${REFUND_DAYS} days.`;
}

/**
 * Beside every way to pay: payments are entered by a person, so the amount stays on the page for a while after it was paid.
 * `within` as text, for instance '2 working days'.
 */
export function paidAlready({
  within,
  place,
}: {
  within: string;
  place: 'here' | 'on the job page';
}): string {
  return `Paid already? Please do not pay twice. A person enters it ${place} within ${within} after the money has reached us.`;
}
