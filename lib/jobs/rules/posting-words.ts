/**
 * When a unit that is ready leaves, the same on its page and in its mail; common practice, no source.
 *
 * postingSentence(true) -> 'We post it on the working day after your payment is here.'
 */
export function postingSentence(waitsForPayment: boolean): string {
  return waitsForPayment
    ? 'We post it on the working day after your payment is here.'
    : 'We post it on the next working day.';
}
