import type { SerialRule } from '@/lib/numbers/serial';
import type { BatteryKind } from '@/lib/parcels/rules/battery';
import type { HeldRule, StartEvent } from '@/lib/warranty/rules/terms';

/** The words of the catalogue's screens for what the rules call by a key. */

export const SERIAL_RULE_WORDS: Record<SerialRule, string> = {
  none: 'No check character',
  luhn: 'Luhn, last digit',
  imei: 'IMEI, last digit',
  'mod-11-2': 'ISO 7064 MOD 11-2',
  'mod-37-2': 'ISO 7064 MOD 37-2',
  'mod-97-10': 'ISO 7064 MOD 97-10',
  'mod-11-10': 'ISO 7064 MOD 11,10',
  'mod-37-36': 'ISO 7064 MOD 37,36',
  gs1: 'GS1, last digit',
};

export const BATTERY_WORDS: Record<BatteryKind, string> = {
  none: 'No battery',
  'button-cell': 'Button cell',
  'lithium-ion': 'Lithium-ion',
};

export const START_WORDS: Record<StartEvent, string> = {
  'handed-to-carrier': 'the day it is handed to the carrier',
  delivered: 'the day it is delivered',
  collected: 'the day it is collected',
};

export const HELD_WORDS: Record<HeldRule, string> = {
  none: 'Not given back',
  'whole-days': 'Given back, whole days',
  'from-seven-days': 'Given back from seven days on',
  'two-months-from-return': 'At least two months from the return, for that fault',
};

export const HELD_HINTS: Record<HeldRule, string> = {
  none: 'Days the unit spends here on a claim are lost to the customer. Local law may not allow that.',
  'whole-days': 'Every whole day out of the customer’s hands; the day it was handed in is not counted.',
  'from-seven-days': 'All of them once it was away for seven days or more, none before.',
  'two-months-from-return': 'The fault of the claim stays covered for two months after the unit is back.',
};

export const TAX_WORDS = {
  S: 'Standard or reduced rate',
  Z: 'Zero rate',
  E: 'Exempt',
  O: 'Outside the tax',
} as const;

/** Choices for a select or radio group, from a record of words. */
export function choicesOf<K extends string>(words: Record<K, string>): { value: K; label: string }[] {
  return keysOf(words).map((value) => ({ value, label: words[value] }));
}

export function keysOf<K extends string>(words: Record<K, string>): K[] {
  return Object.keys(words).filter((key): key is K => Object.hasOwn(words, key));
}
