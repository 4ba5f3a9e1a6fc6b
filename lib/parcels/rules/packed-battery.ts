import { type BatteryKind, type BatteryVerdict, batteryVerdict } from './battery';

/** What stands about the battery of a unit that goes back, as whoever packs it sees it. */
export const PACKED_BATTERIES = ['fitted', 'loose', 'none', 'unsound'] as const;
export type PackedBattery = (typeof PACKED_BATTERIES)[number];

export const PACKED_BATTERY_WORDS: Record<PackedBattery, string> = {
  fitted: 'Fitted in the unit, and sound',
  loose: 'In the parcel, outside the unit',
  none: 'No battery in the parcel',
  unsound: 'Swollen, leaking, hot, wet or recalled, or nobody can tell',
};

export function isPackedBattery(text: string): text is PackedBattery {
  return PACKED_BATTERIES.some((known) => known === text);
}

/**
 * What is taken to stand about the battery before anybody has said it, from the answer at booking: a battery that the
 * customer kept is not in the parcel, one that was not sound counts as unsound until somebody says that it is out.
 * packedBatteryFrom('lithium-ion', 'weak') -> 'fitted'
 */
export function packedBatteryFrom(battery: BatteryKind, answer: string): PackedBattery {
  if (battery === 'none' || answer === 'none') return 'none';
  return answer === 'healthy' || answer === 'weak' ? 'fitted' : 'unsound';
}

/**
 * Whether the packed unit's battery may travel, and with which mark.
 * packedVerdict({ battery: 'lithium-ion', wattHours: 12.36 }, 'loose').may -> 'road-only'
 */
export function packedVerdict(
  model: { battery: BatteryKind; wattHours: number | null },
  packed: PackedBattery,
): BatteryVerdict {
  return batteryVerdict({
    battery: packed === 'none' ? 'none' : model.battery,
    wattHours: model.wattHours,
    packing: packed === 'loose' ? 'with-unit' : 'in-unit',
    condition: packed === 'unsound' ? 'unknown' : 'healthy',
  });
}
