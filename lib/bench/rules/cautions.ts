/** Closes every caution. */
export const FIRST_COME = "Local codes, the maker's data and licensed practice come first.";

const TEXTS = {
  'lithium-cells': {
    title: 'Lithium cells',
    text: 'Never press, bend, pierce or heat a cell. A swollen, dented or wet cell is not charged again: put it in a fireproof box in the open and take it to hazardous waste. After work near a cell, watch the first charge from start to end on a surface that does not burn.',
  },
  'mains-capacitors': {
    title: 'Mains and stored charge',
    text: 'Primary capacitors hold a deadly charge after the plug is out. Unplug, wait, discharge through a resistor, and measure before you touch. Work on open mains equipment only if you are trained for it, never alone, and behind an isolating transformer with a residual-current device on the feed.',
  },
  'mains-test': {
    title: 'Safety test after a mains repair',
    text: 'Only a person competent for electrical safety tests may carry out and sign these. The limits printed here are a template: check them against the standard in force before you use them.',
  },
  'hot-air': {
    title: 'Hot air and fumes',
    text: 'Nozzle and board stay hot for minutes. Keep solvents, cells and sleeves out of the stream, wear eye protection, and draw fumes away from your face: flux smoke harms the lungs.',
  },
  solvents: {
    title: 'Solvents',
    text: 'Cleaning alcohol and its vapour burn. No iron, hot air or spark near it; open the window, wear gloves and glasses, keep the bottle shut, and let the unit dry before power goes on.',
  },
  static: {
    title: 'Static',
    text: 'Wear the wrist strap and test it; keep boards on the mat or in shielding bags. Damage by static often shows only weeks later, as a unit that comes back.',
  },
  'liquid-metal': {
    title: 'Gallium-based thermal metal',
    text: 'It conducts, and it eats aluminium. Mask everything near it, never use it on an aluminium sink, and look for stray beads under magnification before power goes on. Wear gloves and collect the waste.',
  },
} as const satisfies Record<string, { title: string; text: string }>;

export type CautionKey = keyof typeof TEXTS;
export type Caution = { key: CautionKey; title: string; text: string };

export const CAUTION_KEYS = Object.keys(TEXTS).filter(isCautionKey);

export function isCautionKey(text: string): text is CautionKey {
  return Object.hasOwn(TEXTS, text);
}

/** The caution of a key, its text ending with what comes first; null for a key that is not known. */
export function cautionOf(key: string | null): Caution | null {
  if (key === null || !isCautionKey(key)) return null;
  return { key, title: TEXTS[key].title, text: `${TEXTS[key].text} ${FIRST_COME}` };
}
