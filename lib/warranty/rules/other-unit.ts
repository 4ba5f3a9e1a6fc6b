import { compareSerials } from '@/lib/numbers/serial';

/**
 * Whether a unit on the bench is another one than the certificate's. A serial that is only close is no other unit: a person
 * who has looked at it has settled that, with a photo.
 */
export function isOtherUnit(certificateSerial: string, settledSerial: string): boolean {
  return compareSerials(certificateSerial, settledSerial) === 'different';
}
