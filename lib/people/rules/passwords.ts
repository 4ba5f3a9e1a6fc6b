/** Shorter ones are refused; ASVS 5.0 6.2.1 asks for 8 and recommends 15. */
export const PASSWORD_MIN = 12;
/** ASVS 5.0 6.2.9: at least 64 must be allowed. */
export const PASSWORD_MAX = 128;

/** Days a temporary password opens the account (ASVS 5.0 6.4.1: first secrets are short-lived and used once). */
export const TEMPORARY_PASSWORD_DAYS = 3;

export type PasswordProblem = 'short' | 'long' | 'personal' | 'repeating';

/**
 * What is wrong with a new password, or null. Any characters, no rules of composition (ASVS 5.0 6.2.5): it refuses only
 * the wrong length, a few characters over and over, and one built on the person's own name, address or workshop.
 *
 *     passwordProblem('quay-and-alder-1', ['Quay & Alder'])  →  'personal'
 */
export function passwordProblem(password: string, personal: readonly string[]): PasswordProblem | null {
  if (password.length < PASSWORD_MIN) return 'short';
  if (password.length > PASSWORD_MAX) return 'long';
  if (new Set(password.toLowerCase()).size < 5) return 'repeating';
  const folded = fold(password);
  const isPersonal = personal.flatMap(wordsOf).some((word) => {
    const rest = folded.replaceAll(word, '');
    return rest !== folded && rest.length < 8;
  });
  return isPersonal ? 'personal' : null;
}

// The whole text, the part before an @, and each of its words; too short ones stand in any password by chance.
function wordsOf(text: string): string[] {
  const parts = [text, text.split('@')[0] ?? '', ...text.split(/[\s@.&-]+/u)];
  return parts.map(fold).filter((word) => word.length >= 4);
}

function fold(text: string): string {
  return text
    .toLowerCase()
    .replace(/&/g, 'and')
    .replace(/[^\p{L}\p{N}]/gu, '');
}

// Without 0 O 1 I L, so that it can be read out and typed from paper.
const ALPHABET = 'abcdefghjkmnpqrstuvwxyz23456789';

/**
 * A password to hand over on paper: four groups of five out of 31 characters, 99 bits.
 * Takes the source of chance: randomBelow(n) returns a whole number from 0 to n - 1.
 */
export function drawPassword(randomBelow: (n: number) => number): string {
  return groups(4, randomBelow);
}

/** A backup code for the second step: five groups of five, 124 bits; typed from paper when the phone is lost. */
export function drawBackupCode(randomBelow: (n: number) => number): string {
  return groups(5, randomBelow);
}

function groups(count: number, randomBelow: (n: number) => number): string {
  const letter = () => ALPHABET.charAt(randomBelow(ALPHABET.length));
  return Array.from({ length: count }, () => Array.from({ length: 5 }, letter).join('')).join('-');
}
