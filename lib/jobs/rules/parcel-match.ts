import { compareSerials, foldSerial } from '@/lib/numbers/serial';

/** A booked unit by what may be read from its parcel. */
export type Parcel = { number: string; serial: string; reference: string };
export type ParcelMatch = { number: string; by: 'reference' | 'serial' | 'near-serial' };

/**
 * Which expected parcels a text read from a parcel or unit fits: by the carrier's reference or the very serial, and only
 * where none does, by a serial that may have been misread. A near serial never decides by itself, so it comes as a list
 * to choose from.
 *
 * matchParcels('HW2-1O480-K', [{ number: 'J…', serial: 'HW2-10480-K', reference: '' }]) -> [{ number: 'J…', by: 'near-serial' }]
 */
export function matchParcels(text: string, parcels: readonly Parcel[]): ParcelMatch[] {
  const key = foldSerial(text);
  if (key === '') return [];
  const exact = parcels.flatMap((parcel): ParcelMatch[] => {
    if (foldSerial(parcel.reference) === key) return [{ number: parcel.number, by: 'reference' }];
    return foldSerial(parcel.serial) === key ? [{ number: parcel.number, by: 'serial' }] : [];
  });
  if (exact.length > 0) return exact;
  return parcels
    .filter((parcel) => compareSerials(parcel.serial, text) === 'likely-misread')
    .map((parcel) => ({ number: parcel.number, by: 'near-serial' }));
}
