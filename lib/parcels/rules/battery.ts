/*
 * Words of this file.
 * cell: one electrochemical cell; a pack made of a single cell counts as a cell. battery: a pack of two cells or more.
 * in-unit: fitted in the equipment. with-unit: loose in the same parcel. alone: no equipment in the parcel.
 * mark: the printed lithium battery mark on the outside of the parcel. road-only: a carrier that keeps it on the ground.
 */

export const BATTERY_KINDS = ['none', 'button-cell', 'lithium-ion'] as const;
export type BatteryKind = (typeof BATTERY_KINDS)[number];

export const BATTERY_CONDITIONS = [
  'healthy',
  'weak',
  'swollen',
  'leaking',
  'hot',
  'wet',
  'recalled',
  'unknown',
] as const;
export type BatteryCondition = (typeof BATTERY_CONDITIONS)[number];

export type BatteryPacking = 'in-unit' | 'with-unit' | 'alone';

export type BatteryFacts = {
  battery: BatteryKind;
  /** Watt-hours of one battery, unrounded; null when nobody knows. */
  wattHours: number | null;
  packing: BatteryPacking;
  condition: BatteryCondition;
  /** Cells in one battery. When not given, above 20 Wh is taken as a pack of several (practice: no single cell that big is fitted). */
  cells?: number | undefined;
  /** Batteries of this size in the parcel; 1 when not given. */
  batteries?: number | undefined;
  /** Parcels of the same consignment; 1 when not given. */
  packages?: number | undefined;
};

export type BatteryCode =
  | 'no-battery'
  | 'within-limits'
  | 'loose-by-road'
  | 'damaged'
  | 'unclear-condition'
  | 'unclear-size'
  | 'over-limit';

export type BatteryVerdict = {
  may: 'post' | 'road-only' | 'do-not-post';
  /** Whether the parcel needs the lithium battery mark. */
  mark: boolean;
  /** The deciding fact, for code; `reasons` are the sentences for people. */
  code: BatteryCode;
  reasons: string[];
  /** What to do instead, in order; empty when it may be posted as it is. */
  insteadSteps: string[];
  /** Most charge, in percent, to send it at: a duty by air for loose batteries above 2.7 Wh since 2026, advice for fitted ones. */
  chargeAtMost: number | null;
};

// ADR 3.3 SP 188 (a), (b); the same limits stand in IATA PI 966 and 967, Section II.
export const CELL_LIMIT_WH = 20;
export const BATTERY_LIMIT_WH = 100;
// ADR 3.3 SP 188 (f): fitted in equipment, no mark up to four cells or two batteries (two-parcel limit: from memory).
const UNMARKED_CELLS = 4;
const UNMARKED_BATTERIES = 2;
const UNMARKED_PACKAGES = 2;
// ICAO Technical Instructions 2025-26 for UN 3481 packed with equipment, from 1 January 2026 (30 % for this case: from memory).
const CHARGE_RULE_ABOVE_WH = 2.7;
const CHARGE_AT_MOST = 30;

export const LOCAL_RULES_FIRST =
  "Local rules and the carrier's own terms come first. Where they allow less than this, follow them.";

const DAMAGED: ReadonlySet<BatteryCondition> = new Set(['swollen', 'leaking', 'hot', 'wet', 'recalled']);

/** Energy of a battery, unrounded: wattHours(11.1, 5.2) is 57.72. Volts nominal, ampere-hours rated; refuses what is not above zero. */
export function wattHours(volts: number, ampereHours: number): number {
  if (!(volts > 0) || !(ampereHours > 0))
    throw new RangeError(`Not a battery: ${volts} V, ${ampereHours} Ah`);
  return volts * ampereHours;
}

/**
 * Whether a unit's battery may travel by post, and how: by the class of rule of ADR SP 188 and SP 376 and of IATA PI 966 and 967.
 *
 * Damaged comes before everything else: a swollen, leaking, hot, wet or recalled battery, and one that nobody can judge, is never
 * accepted by post (SP 376; forbidden by air). Sizes are compared unrounded. Loose lithium batteries go by road only, since post
 * takes them fitted in equipment only (Universal Postal Union, from memory) and loose ones may not fly with passengers.
 * Refuses counts below 1 and a size that is not above zero.
 * Example: lithium-ion, 12.36 Wh, in-unit, healthy gives { may: 'post', mark: false }; swollen gives 'do-not-post'.
 */
export function batteryVerdict(facts: BatteryFacts): BatteryVerdict {
  refuseCounts(facts);
  if (facts.battery === 'none')
    return verdict('post', 'no-battery', ['There is no battery in the parcel.'], []);
  if (DAMAGED.has(facts.condition)) return damaged(facts);
  if (facts.condition === 'unknown') {
    return verdict('do-not-post', 'unclear-condition', [UNCLEAR_CONDITION], [...UNCLEAR_STEPS]);
  }
  if (facts.battery === 'button-cell') return buttonCell(facts);
  if (facts.wattHours === null)
    return verdict('do-not-post', 'unclear-size', [UNCLEAR_SIZE], [...SIZE_STEPS]);
  if (facts.wattHours > limitOf(facts))
    return verdict('do-not-post', 'over-limit', [overLimit(facts)], [...OVER_STEPS]);
  return facts.packing === 'in-unit' ? fitted(facts, facts.wattHours) : loose(facts, facts.wattHours);
}

function buttonCell(facts: BatteryFacts): BatteryVerdict {
  if (facts.packing === 'in-unit') {
    return verdict(
      'post',
      'within-limits',
      ['A button cell that stays fitted in the unit may be posted without a mark.'],
      [],
    );
  }
  return verdict('road-only', 'loose-by-road', [LOOSE_BY_ROAD], [...LOOSE_STEPS], true);
}

function fitted(facts: BatteryFacts, wh: number): BatteryVerdict {
  const mark = needsMark(facts);
  const reasons = [
    `A sound lithium battery of ${shownWh(wh)} fitted in the unit is inside the limit of ${limitOf(facts)} Wh.`,
  ];
  if (mark) reasons.push('The parcel needs the lithium battery mark on the outside.');
  return verdict(
    'post',
    'within-limits',
    reasons,
    [],
    mark,
    wh > CHARGE_RULE_ABOVE_WH ? CHARGE_AT_MOST : null,
  );
}

function loose(facts: BatteryFacts, wh: number): BatteryVerdict {
  const charge = facts.packing === 'alone' || wh > CHARGE_RULE_ABOVE_WH ? CHARGE_AT_MOST : null;
  return verdict('road-only', 'loose-by-road', [LOOSE_BY_ROAD], [...LOOSE_STEPS], true, charge);
}

function damaged(facts: BatteryFacts): BatteryVerdict {
  const steps = facts.battery === 'button-cell' ? BUTTON_CELL_STEPS : DAMAGED_STEPS;
  return verdict(
    'do-not-post',
    'damaged',
    [DAMAGED_REASONS[facts.condition] ?? UNCLEAR_CONDITION],
    [...steps],
  );
}

function verdict(
  may: BatteryVerdict['may'],
  code: BatteryCode,
  reasons: string[],
  insteadSteps: string[],
  mark = false,
  chargeAtMost: number | null = null,
): BatteryVerdict {
  return { may, mark, code, reasons: [...reasons, LOCAL_RULES_FIRST], insteadSteps, chargeAtMost };
}

function needsMark({ cells, batteries = 1, packages = 1 }: BatteryFacts): boolean {
  if (packages > UNMARKED_PACKAGES) return true;
  return batteries > (cells === 1 ? UNMARKED_CELLS : UNMARKED_BATTERIES);
}

function limitOf({ cells, wattHours: wh }: BatteryFacts): number {
  if (cells === undefined) return wh !== null && wh > CELL_LIMIT_WH ? BATTERY_LIMIT_WH : CELL_LIMIT_WH;
  return cells === 1 ? CELL_LIMIT_WH : BATTERY_LIMIT_WH;
}

function overLimit(facts: BatteryFacts): string {
  return `${shownWh(facts.wattHours ?? 0)} is above the limit of ${limitOf(facts)} Wh. It would be declared dangerous goods, which post does not take.`;
}

// Four decimals, so that a battery just above a limit is not shown as one at the limit.
function shownWh(wh: number): string {
  return `${Number(wh.toFixed(4))} Wh`;
}

function refuseCounts({ wattHours: wh, cells, batteries, packages }: BatteryFacts): void {
  if (wh !== null && !(wh > 0)) throw new RangeError(`Not a size of battery: ${wh} Wh`);
  for (const count of [cells, batteries, packages]) {
    if (count !== undefined && (!Number.isInteger(count) || count < 1))
      throw new RangeError(`Not a count: ${count}`);
  }
}

const LOOSE_BY_ROAD =
  'A battery outside the unit may not go by ordinary post. It may go by a carrier that keeps it on the road, with the lithium battery mark.';
const UNCLEAR_CONDITION = 'Nobody can say yet that the battery is sound, so it is treated as damaged.';
const UNCLEAR_SIZE = 'The size of the battery is not known, so nobody can say that it is inside the limits.';

const DAMAGED_REASONS: Partial<Record<BatteryCondition, string>> = {
  swollen:
    'A swollen battery is a damaged battery. It can catch fire in a parcel, so it is never accepted by post.',
  leaking:
    'A leaking battery is a damaged battery. It can catch fire or hurt skin, so it is never accepted by post.',
  hot: 'A battery that gets hot by itself is a damaged battery. It can catch fire in a parcel, so it is never accepted by post.',
  wet: 'A battery that was wet can fail days later. It counts as damaged, so it is never accepted by post.',
  recalled:
    'A battery its maker has called back for safety counts as damaged, so it is never accepted by post.',
};

const DAMAGED_STEPS = [
  'Stop using and charging the unit. Do not open it, press it or pierce it.',
  'If it is hot, hissing, smoking or smells sharp, leave the room and call the fire service.',
  'If it is safe to carry, put it outside on stone or sand, away from anything that burns.',
  'Do not post it and do not put it in the bin. Ask your council or waste site who takes damaged lithium batteries.',
  'Write to us. If a competent person takes the battery out near you, the unit can come by post without it.',
];

const BUTTON_CELL_STEPS = [
  'Do not touch what leaks with bare hands, and keep the cell away from children: a swallowed button cell is an emergency.',
  'If the cell comes out without tools, take it out and tape over both sides. Take it to a battery collection point.',
  'Then book again and say that there is no battery in the parcel. If it does not come out, write to us first.',
];

const UNCLEAR_STEPS = [
  'Do not charge the unit. Look again: is the case bulging, is there a sharp smell, a stain, or warmth while it is switched off?',
  'If you see any of these, choose that answer: it tells you what to do.',
  'If you see none of them, choose the answer that says so. If you still cannot tell, write to us before you post anything.',
];

const SIZE_STEPS = [
  'Look for a number with Wh on the battery or in the manual. Or multiply volts (V) by ampere-hours (Ah).',
  'Write to us with that number before you post anything.',
];

const OVER_STEPS = [
  'Do not post it.',
  'Write to us: if the battery comes out, the unit can come without it. Otherwise we name a carrier that takes declared goods.',
];

const LOOSE_STEPS = [
  'If the battery belongs in the unit, fit it and choose that it is in the unit. Then ordinary post is open to you.',
  'Otherwise send the unit without the battery, or ask a carrier for road transport and say that it is a lithium battery.',
  'Tape over the contacts, and pack it so that it cannot move or switch on.',
];
