import {
  BATTERY_KINDS,
  type BatteryKind,
  type BatteryVerdict,
  LOCAL_RULES_FIRST,
} from '@/lib/parcels/rules/battery';
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
 * Whether a unit may be posted with this answer to the battery question. A cell that we fitted and are no longer sure of counts as
 * damaged whatever the customer sees on it, and whatever the catalogue says of the model: only one that the customer took out and
 * keeps does not travel. `recalledCells` names those that are still in the unit, each with its lot.
 *
 * postedAnswer({ battery: 'lithium-ion', batteryWh: 9.6 }, 'swollen', []).may -> 'do-not-post'
 */
export function postedAnswer(
  model: { battery: string; batteryWh: number | null },
  answer: string,
  recalledCells: readonly string[],
): BatteryVerdict {
  const battery = batteryKind(model.battery);
  const given = batteryAnswer(model, answer);
  const own = verdictOnAnswer({ battery, wattHours: model.batteryWh }, given);
  const isTakenOut = battery !== 'none' && given === 'none';
  if (recalledCells.length === 0 || isTakenOut || own.code === 'damaged') return own;
  const stop = verdictOnAnswer({ battery: 'lithium-ion', wattHours: model.batteryWh }, 'recalled');
  return {
    ...stop,
    reasons: [
      `We are no longer sure of a cell that we fitted in this unit (${recalledCells.join('; ')}). It counts as damaged, so it must not go by post.`,
      LOCAL_RULES_FIRST,
    ],
    insteadSteps: [
      ...stop.insteadSteps,
      'We arrange with you how the cell is handed in or collected safely. The new cell, our work and the way there and back cost you nothing.',
    ],
  };
}
