import { isGs1 } from './gs1';
import { hasValidCheck } from './iso7064';
import { isImei, isLuhn } from './luhn';

export type SerialComparison = 'same' | 'likely-misread' | 'different';
export type SerialRule =
  | 'none'
  | 'luhn'
  | 'imei'
  | 'mod-11-2'
  | 'mod-37-2'
  | 'mod-97-10'
  | 'mod-11-10'
  | 'mod-37-36'
  | 'gs1';
export type SerialCheck = { ok: true } | { ok: false; reason: 'empty' | 'pattern' | 'check' };

// Characters that worn labels and handwriting confuse: common practice, no source.
export const LOOK_ALIKES = ['0OQD', '1ILJ', '2Z', '5S', '6G', '8B'] as const;

/** The key a serial is compared by: capitals and digits only. 'qa-0031 b' becomes 'QA0031B'. */
export function foldSerial(text: string): string {
  return text
    .normalize('NFKC')
    .toUpperCase()
    .replace(/[^\p{L}\p{N}]/gu, '');
}

/**
 * Compares two serials as typed. 'same' when their keys are equal; 'likely-misread' when they differ only in
 * look-alike characters (0OQD, 1ILJ, 2Z, 5S, 6G, 8B) or by one edit (one character wrong, missing, added, or two
 * neighbours swapped: Damerau-Levenshtein distance 1); else 'different'. An empty serial is 'different' from everything.
 * Only 'same' may decide anything without a person. 'QA0O31' and 'QAO031' are a likely misread.
 */
export function compareSerials(a: string, b: string): SerialComparison {
  const left = Array.from(foldSerial(a));
  const right = Array.from(foldSerial(b));
  if (left.length === 0 || right.length === 0) return 'different';
  if (left.join('') === right.join('')) return 'same';
  return looksAlike(left, right) || isOneEdit(left, right) ? 'likely-misread' : 'different';
}

function looksAlike(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((character, i) => isLookAlike(character, b[i] ?? ''));
}

function isLookAlike(a: string, b: string): boolean {
  return a === b || LOOK_ALIKES.some((group) => group.includes(a) && b !== '' && group.includes(b));
}

function isOneEdit(a: readonly string[], b: readonly string[]): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start += 1;
  const restA = a.slice(start);
  const restB = b.slice(start);
  const isTail = (x: readonly string[], y: readonly string[]) => x.join('') === y.join('');
  if (a.length !== b.length) {
    return a.length > b.length ? isTail(restA.slice(1), restB) : isTail(restA, restB.slice(1));
  }
  if (isTail(restA.slice(1), restB.slice(1))) return true;
  return restA[0] === restB[1] && restA[1] === restB[0] && isTail(restA.slice(2), restB.slice(2));
}

// Room for choices grows with each of them; with these limits the worst pattern stays below a tenth of a second.
const MOST_CHOICES = 5;
const LONGEST_KEY = 64;

/**
 * True when a text may be used as a model's serial pattern: a regular expression without look-around, back-references or
 * repeated groups and with at most five choices (*, +, ?, |, {n,m}), so that no serial can make matching slow.
 * 'QA\\d{4}' is one, '(\\d+)+' is not.
 */
export function isSerialPattern(text: string): boolean {
  if (text === '' || text.length > 200) return false;
  if (/\(\?(?!:)|\\[1-9k]|\)[*+{]/.test(text)) return false;
  const bare = text
    .replace(/\\./g, '_')
    .replace(/\[[^\]]*\]/g, '_')
    .replace(/\(\?:|\{\d+\}/g, '');
  const choices = bare.match(/[*+?|{]/g) ?? [];
  return choices.length <= MOST_CHOICES && compile(text) !== null;
}

function compile(pattern: string): RegExp | null {
  try {
    return new RegExp(`^(?:${pattern})$`, 'u');
  } catch {
    return null;
  }
}

/**
 * Checks a typed serial against what its model says. The pattern describes the whole key (capitals and digits), or the
 * text as typed in capitals where it names the separators itself; a pattern that `isSerialPattern` refuses is not applied.
 * The answer is a warning for a person, never a block: serials in general carry no check digit, and labels vary.
 * ('QA-0031', pattern 'QA\\d{4}', rule 'none') is ok.
 */
export function checkSerial(text: string, model: { pattern: string | null; rule: SerialRule }): SerialCheck {
  const key = foldSerial(text);
  if (key === '') return { ok: false, reason: 'empty' };
  if (!fits(text, key, model.pattern)) return { ok: false, reason: 'pattern' };
  return passes(key, model.rule) ? { ok: true } : { ok: false, reason: 'check' };
}

function fits(text: string, key: string, pattern: string | null): boolean {
  const expression = pattern !== null && isSerialPattern(pattern) ? compile(pattern) : null;
  if (expression === null) return true;
  const typed = text.trim().toUpperCase();
  return [key, typed].some((form) => form.length <= LONGEST_KEY && expression.test(form));
}

function passes(key: string, rule: SerialRule): boolean {
  switch (rule) {
    case 'none':
      return true;
    case 'luhn':
      return isLuhn(key);
    case 'imei':
      return isImei(key);
    case 'gs1':
      return isGs1(key);
    default:
      return hasValidCheck(rule, key);
  }
}
