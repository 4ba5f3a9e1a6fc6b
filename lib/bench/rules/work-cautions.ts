import { CAUTION_KEYS, type CautionKey, isCautionKey } from './cautions';

export type WorkFacts = {
  /** none, button-cell, lithium-ion */
  battery: string;
  isMainsPowered: boolean;
  /** Names and sentences of the repair and its parts. */
  words: readonly string[];
  /** Cautions that checks of the sheet carry. */
  onSheet: readonly (string | null)[];
};

// What work sounds like in the catalogue's own words (common practice, no source); one too many is better than one missing.
const SOUNDS_LIKE: Partial<Record<CautionKey, RegExp>> = {
  'hot-air': /solder|socket|inlet|connector|jack|pads?\b|traces?\b|chip|rework|display/i,
  solvents: /clean|wash|flux|liquid|residue|alcohol/i,
  'liquid-metal': /gallium|liquid metal|thermal/i,
};

/**
 * Cautions that belong to the work on a unit, each once, in the order they are listed: by what the unit is (lithium cell, mains), by
 * what the repair is called, and by what its sheet says. Boards are always open to static.
 * Example: a mains repair without a battery gives ['mains-capacitors', 'mains-test', 'hot-air', 'static'] when it names a socket.
 */
export function workCautions(facts: WorkFacts): CautionKey[] {
  const wanted = new Set<CautionKey>(['static']);
  if (facts.battery === 'lithium-ion') wanted.add('lithium-cells');
  if (facts.isMainsPowered) wanted.add('mains-capacitors').add('mains-test');
  for (const key of facts.onSheet) if (key !== null && isCautionKey(key)) wanted.add(key);
  const words = facts.words.join(' ');
  for (const key of CAUTION_KEYS) if (SOUNDS_LIKE[key]?.test(words)) wanted.add(key);
  return CAUTION_KEYS.filter((key) => wanted.has(key));
}
