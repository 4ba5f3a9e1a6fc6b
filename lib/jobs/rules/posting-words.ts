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

/**
 * What to do with a parcel that comes back, the same on its page and in its mail: who sees damage only after days can hardly show
 * the carrier that it happened on the way; common practice, no source.
 */
export function lookAtParcel(place: 'here' | 'on the job page'): string {
  return `Look at the parcel before you open it. Is it damaged? Keep the box, take photos, and write to us ${place} the same day.`;
}
