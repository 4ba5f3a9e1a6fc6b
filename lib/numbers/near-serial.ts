import { ALPHANUMERIC } from './alphabet';
import { foldSerial, LOOK_ALIKES } from './serial';

/*
 * Words of this file, for looking up in a store what compareSerials() calls a likely misread.
 * key: a folded serial. look-alike key: the key with every group of look-alikes written as its first character, so that two
 * keys that differ by look-alikes alone have the same one. one edit: a character wrong, missing or added, or two swapped.
 */

/** Shorter keys are close to too many others to be searched for, and nobody's serial is longer. */
export const NEAR_KEY = { shortest: 4, longest: 40 } as const;

/** True for a key that is worth a search for what is close to it. */
export function isNearKey(key: string): boolean {
  const { length } = Array.from(key);
  return length >= NEAR_KEY.shortest && length <= NEAR_KEY.longest;
}

/**
 * The look-alike key of a serial as typed: 'qa-0O31 z' becomes '0A00312'. Two serials of the same length that differ by
 * look-alikes alone have the same one.
 */
export function lookAlikeKey(text: string): string {
  return Array.from(foldSerial(text), (character) => {
    const group = LOOK_ALIKES.find((characters) => characters.includes(character));
    return group?.charAt(0) ?? character;
  }).join('');
}

/**
 * Every key one edit away from a key, and the key itself: some 700 for nine characters. `written` are the characters that
 * may stand where the edit was, capitals and digits unless told otherwise; a key with any other there is not named.
 */
export function oneEditKeys(key: string, written: string = ALPHANUMERIC): string[] {
  const characters = Array.from(key);
  const found = new Set([key]);
  for (let i = 0; i <= characters.length; i += 1) {
    const before = characters.slice(0, i).join('');
    const [here, next, ...rest] = characters.slice(i);
    const after = characters.slice(i + 1).join('');
    for (const other of written) found.add(before + other + (here ?? '') + after);
    if (here === undefined) continue;
    found.add(before + after);
    for (const other of written) found.add(before + other + after);
    if (next !== undefined) found.add(before + next + here + rest.join(''));
  }
  return [...found];
}
