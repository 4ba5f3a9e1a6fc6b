import type { Tx } from '@/lib/db/transaction';
import type { Handover } from '@/lib/jobs/rules/handover';
import { s10Digit } from '@/lib/numbers/s10';
import type { Carrier } from '@/lib/parcels/rules/carriers';
import { pick } from './chance';

/** The three invented carriers of the demonstration workshop, in its order. */
export const DEMO_CARRIERS = [
  {
    name: 'Sandmouth Post',
    volume: { unit: 'cm-kg', divisor: 6000, wholeSides: false, step: 500 },
    maxWeight: 20_000,
    longestSide: 1000,
    maxValueMinor: 50_000,
    kind: 'post',
    tracking: 'https://post.example.org/follow/{reference}',
    transit: { home: 5, abroad: 20 },
  },
  {
    name: 'Tern & Tide Parcels',
    volume: { unit: 'cm-kg', divisor: 5000, wholeSides: true, step: 500 },
    maxWeight: 25_000,
    longestSide: 1200,
    maxValueMinor: 100_000,
    kind: 'post',
    tracking: 'https://parcels.example.org/where?ref={reference}',
    transit: { home: 3, abroad: 15 },
  },
  {
    name: 'Fenroad Carriers',
    volume: { unit: 'cm-kg', divisor: 5000, wholeSides: true, step: 1000 },
    maxWeight: 40_000,
    longestSide: 1600,
    maxValueMinor: 250_000,
    kind: 'road',
    tracking: null,
    transit: { home: 4, abroad: 20 },
  },
] as const satisfies readonly Carrier[];

export async function writeCarriers(tx: Tx): Promise<void> {
  await tx.carrier.createMany({
    data: DEMO_CARRIERS.map(
      ({ volume, maxWeight, longestSide, tracking, transit, ...carrier }, position) => ({
        ...carrier,
        position,
        divisor: volume.divisor,
        wholeSides: volume.wholeSides,
        stepGrams: volume.step,
        maxGrams: maxWeight,
        longestSideMm: longestSide,
        tracking: tracking ?? '',
        daysHome: transit.home,
        daysAbroad: transit.abroad,
      }),
    ),
  });
}

/** Who takes a parcel there and under which reference; abroad it goes by post, with a reference of the form of UPU S10. */
export function carrierFor(country: string, job: string): Handover {
  const serial = String(pick(`${job}/parcel`, 10_000_000, 99_999_999));
  const [post, parcels] = DEMO_CARRIERS;
  return country !== 'GB' || pick(`${job}/carrier`, 0, 2) === 0
    ? { by: 'carrier', carrier: post.name, carrierReference: `CX${serial}${s10Digit(serial)}GB` }
    : {
        by: 'carrier',
        carrier: parcels.name,
        carrierReference: `TT-${serial.slice(0, 4)}-${serial.slice(4)}`,
      };
}
