/**
 * Check characters by ISO/IEC 7064. Glossary:
 * - payload: the text that is protected, without its check character.
 * - pure system: one modulus, weights are powers of a radix (clauses 6 to 8 of the standard).
 * - hybrid system: two moduli, M and M + 1 (clauses 9 and 10).
 * - supplementary character: X or *, possible in check position only.
 */
import { ALPHANUMERIC } from './alphabet';

export type Iso7064System = 'mod-11-2' | 'mod-37-2' | 'mod-97-10' | 'mod-11-10' | 'mod-27-26' | 'mod-37-36';

const DIGITS = '0123456789';
const LETTERS = ALPHANUMERIC.slice(10);

/**
 * The check character (two digits for MOD 97-10) of a payload, or null when the payload is
 * empty or holds a character outside the system's alphabet: ('mod-11-2', '0794') gives '0'.
 */
export function checkCharacter(system: Iso7064System, payload: string): string | null {
  switch (system) {
    case 'mod-11-2':
      return pure(payload, DIGITS, 11, `${DIGITS}X`);
    case 'mod-37-2':
      return pure(payload, ALPHANUMERIC, 37, `${ALPHANUMERIC}*`);
    case 'mod-97-10':
      return mod97(payload);
    case 'mod-11-10':
      return hybrid(payload, DIGITS);
    case 'mod-27-26':
      return hybrid(payload, LETTERS);
    case 'mod-37-36':
      return hybrid(payload, ALPHANUMERIC);
  }
}

/** True when the text ends in the check character of what precedes it: ('mod-37-2', 'ABC123G') holds. */
export function hasValidCheck(system: Iso7064System, text: string): boolean {
  const length = system === 'mod-97-10' ? 2 : 1;
  return text.length > length && checkCharacter(system, text.slice(0, -length)) === text.slice(-length);
}

function pure(payload: string, alphabet: string, modulus: number, withSupplement: string): string | null {
  let sum = 0;
  for (const character of payload) {
    const value = alphabet.indexOf(character);
    if (value < 0) return null;
    sum = ((sum + value) * 2) % modulus;
  }
  return payload === '' ? null : withSupplement.charAt((modulus + 1 - sum) % modulus);
}

// Letters count as two digits, A = 10 to Z = 35, as IBAN and LEI do. The pair stays in
// 02..98: 00, 01 and 99 would be congruent, but the standard's procedure never yields them.
function mod97(payload: string): string | null {
  let sum = 0;
  for (const character of payload) {
    const value = ALPHANUMERIC.indexOf(character);
    if (value < 0) return null;
    sum = (sum * (value > 9 ? 100 : 10) + value) % 97;
  }
  return payload === '' ? null : String(98 - ((sum * 100) % 97)).padStart(2, '0');
}

function hybrid(payload: string, alphabet: string): string | null {
  const modulus = alphabet.length;
  let product = modulus;
  for (const character of payload) {
    const value = alphabet.indexOf(character);
    if (value < 0) return null;
    product = (((product + value) % modulus || modulus) * 2) % (modulus + 1);
  }
  return payload === '' ? null : alphabet.charAt((modulus + 1 - product) % modulus);
}
