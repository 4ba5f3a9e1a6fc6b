import type { BatteryKind, BatteryVerdict } from './battery';

export type PackingFacts = {
  /** As the customer knows it: 'Skerrin Two groove box'. */
  unit: string;
  jobKind: 'repair' | 'claim';
  /** Accessories the customer said they send along. */
  sentAlong: readonly string[];
  /** Every accessory of the model; those not sent along are named under what to keep. */
  accessories: readonly string[];
  battery: BatteryKind;
  verdict: Pick<BatteryVerdict, 'may' | 'mark' | 'code' | 'chargeAtMost'>;
  /** Weight of the bare unit in grams, 0 when not known. */
  weightGrams: number;
  isMainsPowered: boolean;
};

export type PackingAdvice = {
  include: string[];
  leaveOut: string[];
  pack: string[];
  /** What goes on the outside of the box. */
  outside: string[];
};

/** Above this a single-wall box gives way at the corners (common practice, no source). */
const HEAVY_GRAMS = 3000;

/**
 * What goes into the parcel, what stays at home, how to pack and what goes on the box: sentences for the packing slip.
 * Refuses a unit whose battery must not be posted, since no slip may be made for it.
 * Example: a recorder with 'carry case' told and 'SD card' not gives include ['The field recorder …', 'carry case', …].
 */
export function packingAdvice(facts: PackingFacts): PackingAdvice {
  if (facts.verdict.may === 'do-not-post')
    throw new RangeError('A unit with this battery must not be posted');
  return { include: include(facts), leaveOut: leaveOut(facts), pack: pack(facts), outside: outside(facts) };
}

function include(facts: PackingFacts): string[] {
  const certificate = 'A copy of the certificate, or its number on a piece of paper';
  return [
    `The unit itself: ${facts.unit}`,
    ...facts.sentAlong,
    'This slip, cut along the dotted line, with the job number on it',
    ...(facts.jobKind === 'claim' ? [certificate] : []),
  ];
}

function leaveOut(facts: PackingFacts): string[] {
  const told = new Set(facts.sentAlong);
  const kept = facts.accessories.filter((name) => !told.has(name));
  const list = [...kept, 'Memory cards and other media with your own recordings, unless we asked for them'];
  if (facts.isMainsPowered) list.push('Mains leads and wall adapters, unless they are part of the fault');
  if (facts.battery !== 'none' && facts.verdict.code === 'no-battery')
    list.push('The battery you took out, and any spare one');
  list.push('Loose batteries and power banks: they must not travel in this parcel');
  return [...list, 'Anything you would miss: notes, straps, keys, gift boxes'];
}

function pack(facts: PackingFacts): string[] {
  const heavy = facts.weightGrams > HEAVY_GRAMS;
  const list = [
    'Take a picture of the unit from all sides before you pack it.',
    'Switch the unit off, and make sure that no key or switch can turn it on in the box.',
  ];
  if (facts.battery !== 'none' && facts.verdict.code !== 'no-battery') {
    list.push('Leave the battery fitted in the unit. Do not pack it loose.');
    if (facts.verdict.chargeAtMost !== null) {
      list.push(
        `Do not charge it before posting: about ${facts.verdict.chargeAtMost} % or less travels best.`,
      );
    }
  }
  return [
    ...list,
    'Put it in a plastic bag against rain, then wrap it in soft padding. Cover knobs and sockets, which break first.',
    heavy
      ? 'Use a strong double-wall box, with 6 cm of padding on every side, and shake it: nothing may move.'
      : 'Use a strong box, with 5 cm of padding on every side, and shake it: nothing may move.',
    'Tape every seam. Remove old labels and old marks.',
  ];
}

function outside(facts: PackingFacts): string[] {
  const list = [
    'The address label of this slip, flat, on the largest side',
    'Your own address as the sender',
  ];
  // ADR 5.2.1.9, smallest size of the mark: from memory.
  if (facts.verdict.mark)
    list.push('The lithium battery mark, at least 100 x 70 mm, on the same side as the address');
  if (facts.verdict.may === 'road-only')
    list.push('Ask the carrier for road transport: this parcel may not fly');
  return list;
}
