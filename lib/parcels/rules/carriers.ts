import type { BatteryVerdict } from './battery';
import { chargeableWeight, type ParcelMeasures, type VolumeRule, volumetricWeight } from './weight';

export const CARRIER_KINDS = ['post', 'road'] as const;
/** post flies what it likes; road keeps every parcel on the ground and takes loose lithium batteries. */
export type CarrierKind = (typeof CARRIER_KINDS)[number];

/** A carrier as the workshop deals with it. Weights in grams, sides in millimetres, values in minor units of the workshop's currency. */
export type Carrier = {
  name: string;
  volume: VolumeRule;
  maxWeight: number;
  longestSide: number;
  /** Declared value up to which a lost parcel is made good. */
  maxValueMinor: number;
  kind: CarrierKind;
  /** Address of the carrier's own page on a parcel, {reference} standing for the carrier reference; null where it has none. */
  tracking: string | null;
  /** the longest its parcels usually travel */
  transit: Transit;
};

/** Working days a parcel is on its way, at home and to another country. */
export type Transit = { home: number; abroad: number };

/** Of a carrier that is not on the list; common practice, no source. Counted long, so that the post never costs cover. */
export const USUAL_TRANSIT: Transit = { home: 5, abroad: 20 };

/**
 * Working days after which a parcel has usually come at the latest, by its carrier as it is listed; 0 for what is collected.
 *
 * transitDays({ by: 'carrier', listed: null, isAbroad: true }) -> 20
 */
export function transitDays(
  way: { by: 'collected' } | { by: 'carrier'; listed: Pick<Carrier, 'transit'> | null; isAbroad: boolean },
): number {
  if (way.by === 'collected') return 0;
  const { home, abroad } = way.listed?.transit ?? USUAL_TRANSIT;
  return way.isAbroad ? abroad : home;
}

/** The same for a parcel from the workshop to a customer, by the countries of both; a customer whose country is gone is at home. */
export function transitTo(
  way: { carrier: string; from: string; to: string },
  carriers: readonly Carrier[],
): number {
  return transitDays({
    by: 'carrier',
    listed: findCarrier(way.carrier, carriers),
    isAbroad: way.to !== '' && way.to !== way.from,
  });
}

/** The carrier of a name as it was written down, in any case; null for one that is not on the workshop's list. */
export function findCarrier(text: string, carriers: readonly Carrier[]): Carrier | null {
  const wanted = text.trim().toLowerCase();
  return carriers.find((carrier) => carrier.name.toLowerCase() === wanted) ?? null;
}

/** What stands for the carrier reference in the address of a carrier's page. */
export const REFERENCE_PLACE = '{reference}';

/**
 * Whether a text can be the address of a carrier's page on a parcel: https, on a named host, with the place for the
 * reference once and not in the host. isTrackingTemplate('https://post.example.org/follow/{reference}') -> true
 */
export function isTrackingTemplate(text: string): boolean {
  if (text.split(REFERENCE_PLACE).length !== 2) return false;
  const [before = ''] = text.split(REFERENCE_PLACE);
  return /^https:\/\/[a-z0-9-]+(\.[a-z0-9-]+)+(:\d+)?[/?#]/i.test(before) && URL.canParse(text);
}

/** The carrier's page on one parcel, or null where the carrier is not on the list, has no such page, or gave no reference. */
export function trackingAddress(
  carrier: string,
  reference: string,
  carriers: readonly Carrier[],
): string | null {
  const template = findCarrier(carrier, carriers)?.tracking;
  const clean = reference.replace(/\s/g, '');
  return template && clean ? template.replace(REFERENCE_PLACE, () => encodeURIComponent(clean)) : null;
}

/** A parcel as far as it is known: whoever packs it may not have weighed it yet. */
export type PackedParcel = {
  weight: number | null;
  sides: ParcelMeasures['sides'] | null;
  valueMinor: number | null;
  battery: Pick<BatteryVerdict, 'may'>;
};

export type CarrierProblem =
  | 'too-heavy'
  | 'too-long'
  | 'worth-too-much'
  | 'battery-by-road-only'
  | 'battery-not-posted';

/** What could not be compared with a limit, because nobody has said it. */
export type Unsaid = 'weight' | 'size' | 'value';

export type CarrierAnswer = {
  carrier: Carrier;
  /** Grams charged for; null until the parcel is weighed and measured. */
  chargeable: number | null;
  /** Grams by volume, not rounded; null until it is measured. */
  byVolume: number | null;
  problems: CarrierProblem[];
  unsaid: Unsaid[];
};

/**
 * What one carrier says to one parcel: the weight it charges for, every reason why it does not take it, and what is still
 * to be said before all its limits are compared. Limits are inclusive. A parcel that nobody measured breaks no limit.
 * Example: 21 kg by a post that takes up to 20 kg gives problems ['too-heavy'].
 */
export function askCarrier(carrier: Carrier, parcel: PackedParcel): CarrierAnswer {
  const { weight, sides, valueMinor, battery } = parcel;
  const problems: CarrierProblem[] = [];
  const unsaid: Unsaid[] = [];
  if (weight === null) unsaid.push('weight');
  else if (weight > carrier.maxWeight) problems.push('too-heavy');
  if (sides === null) unsaid.push('size');
  else if (Math.max(...sides) > carrier.longestSide) problems.push('too-long');
  if (valueMinor === null) unsaid.push('value');
  else if (valueMinor > carrier.maxValueMinor) problems.push('worth-too-much');
  if (battery.may === 'do-not-post') problems.push('battery-not-posted');
  if (battery.may === 'road-only' && carrier.kind !== 'road') problems.push('battery-by-road-only');
  return {
    carrier,
    chargeable:
      weight === null || sides === null ? null : chargeableWeight({ weight, sides }, carrier.volume),
    byVolume: sides === null ? null : volumetricWeight(sides, carrier.volume),
    problems,
    unsaid,
  };
}
