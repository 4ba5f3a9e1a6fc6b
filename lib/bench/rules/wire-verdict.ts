import { jumperExpectation } from './jumper-wire';

export type WireFacts = { lengthMm: number; diameterUm: number; milliohms: number };

export type WireVerdict = {
  /** The copper alone at 20 °C, in milliohm. */
  wire: number;
  /** With two sound joints, in milliohm. */
  most: number;
  verdict: 'sound' | 'too-high' | 'too-low';
};

// A reading this far below the copper is no better wire but another path or leads that were not zeroed (common practice, no source).
const BELOW_SHARE = 0.2;
const BELOW_MILLIOHMS = 10;

/**
 * What a jumper wire should read, and whether it does. Length in millimetres, diameter in thousandths of one, reading in milliohm.
 * Refuses a wire without length or diameter. Example: 30 mm of 0.1 mm wire that reads 80 is { wire: 65.9, most: 85.9, verdict: 'sound' }.
 */
export function wireVerdict({ lengthMm, diameterUm, milliohms }: WireFacts): WireVerdict {
  const { wire, most } = jumperExpectation({ lengthMm, diameterMm: diameterUm / 1000 });
  const [copper, highest] = [rounded(wire * 1000), rounded(most * 1000)];
  const lowest = copper - Math.max(copper * BELOW_SHARE, BELOW_MILLIOHMS);
  const verdict = milliohms > highest ? 'too-high' : milliohms < lowest ? 'too-low' : 'sound';
  return { wire: copper, most: highest, verdict };
}

const rounded = (value: number) => Math.round(value * 10) / 10;

/** The verdict in a sentence for the bench. */
export function wireSentence({ wire, most, verdict }: WireVerdict): string {
  const should = `Copper alone ${wire} mΩ at 20 °C, with two sound joints at most ${most} mΩ.`;
  if (verdict === 'sound') return `As it should be. ${should}`;
  if (verdict === 'too-high') return `Too high: look at the joints again. ${should}`;
  return `Too low for this wire: zero the leads, and look for another path beside it. ${should}`;
}

/** A wire on one line, for papers: 'R12 to pin A6, 30 mm of 0.1 mm wire'. */
export function wireWords(wire: {
  fromPoint: string;
  toPoint: string;
  lengthMm: number;
  diameterUm: number;
}): string {
  return `${wire.fromPoint} to ${wire.toPoint}, ${wire.lengthMm} mm of ${wire.diameterUm / 1000} mm wire`;
}
