import { s10Digit } from '@/lib/numbers/s10';
import { CARRIERS } from '@/lib/parcels/rules/carriers';
import { pick } from './chance';

/** Who takes a parcel there and under which reference; abroad it goes by post, with a reference of the form of UPU S10. */
export function carrierFor(country: string, job: string): { carrier: string; carrierReference: string } {
  const serial = String(pick(`${job}/parcel`, 10_000_000, 99_999_999));
  const [post, parcels] = CARRIERS;
  if (!post || !parcels) throw new Error('the demonstration needs two carriers');
  return country !== 'GB' || pick(`${job}/carrier`, 0, 2) === 0
    ? { carrier: post.name, carrierReference: `CX${serial}${s10Digit(serial)}GB` }
    : { carrier: parcels.name, carrierReference: `TT-${serial.slice(0, 4)}-${serial.slice(4)}` };
}
