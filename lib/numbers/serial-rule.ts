import type { SerialRule } from './serial';

const RULES: readonly SerialRule[] = [
  'none',
  'luhn',
  'imei',
  'mod-11-2',
  'mod-37-2',
  'mod-97-10',
  'mod-11-10',
  'mod-37-36',
  'gs1',
];

/** The check rule a catalogue row names; a word that is no rule checks nothing. */
export function readSerialRule(text: string): SerialRule {
  return RULES.find((rule) => rule === text) ?? 'none';
}
