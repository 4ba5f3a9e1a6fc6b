import type { BatteryVerdict } from './battery';
import { chargeableWeight, type ParcelMeasures, type VolumeRule } from './weight';

/** A carrier as the workshop deals with it. Weights in grams, sides in millimetres, values in minor units of the workshop's currency. */
export type Carrier = {
  key: string;
  name: string;
  volume: VolumeRule;
  maxWeight: number;
  longestSide: number;
  /** Declared value up to which a lost parcel is made good. */
  maxValueMinor: number;
  /** post flies what it likes; road keeps every parcel on the ground and takes loose lithium batteries. */
  kind: 'post' | 'road';
  /** Address of the carrier's own page on a parcel, {reference} standing for the carrier reference; null where it has none. */
  tracking: string | null;
};

/** Three invented carriers for the demonstration workshop. */
export const CARRIERS: readonly Carrier[] = [
  {
    key: 'sandmouth-post',
    name: 'Sandmouth Post',
    volume: { unit: 'cm-kg', divisor: 6000, wholeSides: false, step: 500 },
    maxWeight: 20_000,
    longestSide: 1000,
    maxValueMinor: 50_000,
    kind: 'post',
    tracking: 'https://post.example.org/follow/{reference}',
  },
  {
    key: 'tern-and-tide',
    name: 'Tern & Tide Parcels',
    volume: { unit: 'cm-kg', divisor: 5000, wholeSides: true, step: 500 },
    maxWeight: 25_000,
    longestSide: 1200,
    maxValueMinor: 100_000,
    kind: 'post',
    tracking: 'https://parcels.example.org/where?ref={reference}',
  },
  {
    key: 'fenroad',
    name: 'Fenroad Carriers',
    volume: { unit: 'cm-kg', divisor: 5000, wholeSides: true, step: 1000 },
    maxWeight: 40_000,
    longestSide: 1600,
    maxValueMinor: 250_000,
    kind: 'road',
    tracking: null,
  },
];

/** The carrier of a key or a name as it was written down, in any case; null for one that is not on the list. */
export function findCarrier(text: string): Carrier | null {
  const wanted = text.trim().toLowerCase();
  return CARRIERS.find((carrier) => carrier.key === wanted || carrier.name.toLowerCase() === wanted) ?? null;
}

/** The carrier's page on one parcel, or null where the carrier is unknown, has no such page, or gave no reference. */
export function trackingAddress(carrier: string, reference: string): string | null {
  const template = findCarrier(carrier)?.tracking;
  const clean = reference.replace(/\s/g, '');
  return template && clean ? template.replace('{reference}', encodeURIComponent(clean)) : null;
}

export type CarrierProblem =
  | 'too-heavy'
  | 'too-long'
  | 'worth-too-much'
  | 'battery-by-road-only'
  | 'battery-not-posted';

export type CarrierAnswer = { carrier: Carrier; chargeable: number; problems: CarrierProblem[] };

/**
 * What one carrier says to one parcel: the weight it charges for, in grams, and every reason why it does not take it.
 * The declared value is compared with the carrier's limit, inclusive. Example: 21 kg by Sandmouth Post gives ['too-heavy'].
 */
export function askCarrier(
  carrier: Carrier,
  parcel: ParcelMeasures & { valueMinor: number; battery: Pick<BatteryVerdict, 'may'> },
): CarrierAnswer {
  const problems: CarrierProblem[] = [];
  if (parcel.weight > carrier.maxWeight) problems.push('too-heavy');
  if (Math.max(...parcel.sides) > carrier.longestSide) problems.push('too-long');
  if (parcel.valueMinor > carrier.maxValueMinor) problems.push('worth-too-much');
  if (parcel.battery.may === 'do-not-post') problems.push('battery-not-posted');
  if (parcel.battery.may === 'road-only' && carrier.kind !== 'road') problems.push('battery-by-road-only');
  return { carrier, chargeable: chargeableWeight(parcel, carrier.volume), problems };
}
