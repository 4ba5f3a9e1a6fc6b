import { BATTERY_KINDS, type BatteryKind, type BatteryVerdict } from '@/lib/parcels/rules/battery';
import { type BatteryAnswer, isBatteryAnswer, verdictOnAnswer } from '@/lib/parcels/rules/battery-answers';

/** The kind of battery a catalogue row states; a word the rules do not know counts as lithium-ion, the strictest. */
export function batteryKind(text: string): BatteryKind {
  return BATTERY_KINDS.find((kind) => kind === text) ?? 'lithium-ion';
}

/** A model without a battery is not asked about one; any answer the question did not offer counts as unknown. */
export function batteryAnswer(model: { battery: string }, answer: string): BatteryAnswer {
  if (batteryKind(model.battery) === 'none') return 'none';
  return isBatteryAnswer(answer) ? answer : 'unknown';
}

/**
 * Whether a booking may go on with this answer to the battery question.
 *
 * postedAnswer({ battery: 'lithium-ion', batteryWh: 9.6 }, 'swollen').may -> 'do-not-post'
 */
export function postedAnswer(
  model: { battery: string; batteryWh: number | null },
  answer: string,
): BatteryVerdict {
  return verdictOnAnswer(
    { battery: batteryKind(model.battery), wattHours: model.batteryWh },
    batteryAnswer(model, answer),
  );
}
