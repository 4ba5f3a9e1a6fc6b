import { type BatteryCondition, type BatteryKind, type BatteryVerdict, batteryVerdict } from './battery';

/** What a booking keeps of the battery question: 'none' when the parcel holds no battery. */
export type BatteryAnswer = 'none' | BatteryCondition;

export const BATTERY_QUESTION = 'How is the battery?';
export const BATTERY_QUESTION_HELP =
  'A damaged battery can set a parcel on fire. You need no tools: look at the case, feel it while it is off, and smell.';

export type BatteryChoice = { value: BatteryAnswer; label: string; hint: string };

/** The answers a customer chooses from, in the order they are shown; one is always true. */
export const BATTERY_ANSWERS: readonly BatteryChoice[] = [
  {
    value: 'healthy',
    label: 'Nothing odd about it',
    hint: 'It works, or I cannot see it and none of the signs below are there.',
  },
  { value: 'weak', label: 'It runs down fast', hint: 'It looks normal, only it does not last.' },
  {
    value: 'swollen',
    label: 'The case bulges or a lid lifts',
    hint: 'Also if a key, pad or screen is pushed up from inside.',
  },
  {
    value: 'leaking',
    label: 'Something leaks or smells sharp',
    hint: 'Stains, crust or wetness at the battery.',
  },
  { value: 'hot', label: 'It gets hot by itself', hint: 'Also if it ever smoked, sparked or burned.' },
  {
    value: 'wet',
    label: 'The unit got wet inside',
    hint: 'Drink, rain, sea or bath water, even if it has dried.',
  },
  {
    value: 'recalled',
    label: 'Its maker has called it back',
    hint: 'You read or were told that this battery is unsafe.',
  },
  {
    value: 'none',
    label: 'There is no battery in the parcel',
    hint: 'I have taken it out and keep it here.',
  },
  {
    value: 'unknown',
    label: 'I am not sure about one of these',
    hint: 'We will help you find out before you post it.',
  },
];

const VALUES: ReadonlySet<string> = new Set(BATTERY_ANSWERS.map((answer) => answer.value));

export function isBatteryAnswer(text: string): text is BatteryAnswer {
  return VALUES.has(text);
}

/** The answers that make sense for a kind of battery; none at all for a unit without one, which is not asked. */
export function batteryAnswersFor(battery: BatteryKind): readonly BatteryChoice[] {
  if (battery === 'none') return [];
  if (battery === 'lithium-ion') return BATTERY_ANSWERS;
  return BATTERY_ANSWERS.filter((answer) => answer.value !== 'hot' && answer.value !== 'recalled');
}

/**
 * The verdict on a customer's answer about the battery of a model, which travels fitted in its unit.
 * Example: ({ battery: 'lithium-ion', wattHours: 12.36 }, 'none') gives { may: 'post', code: 'no-battery' }.
 */
export function verdictOnAnswer(
  model: { battery: BatteryKind; wattHours: number | null },
  answer: BatteryAnswer,
): BatteryVerdict {
  const battery = answer === 'none' ? 'none' : model.battery;
  const condition = answer === 'none' ? 'healthy' : answer;
  return batteryVerdict({ battery, wattHours: model.wattHours, packing: 'in-unit', condition });
}
