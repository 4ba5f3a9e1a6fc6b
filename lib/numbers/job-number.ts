import { ALPHANUMERIC } from './alphabet';
import { checkCharacter, hasValidCheck } from './iso7064';

/** J job, Q quote, W certificate, C claim. */
export type NumberKind = 'J' | 'Q' | 'W' | 'C';
export type NumberFault = 'empty' | 'length' | 'kind' | 'character' | 'check';
export type NumberReading =
  | { ok: true; kind: NumberKind; number: string }
  | { ok: false; reason: NumberFault };

/** The 32 characters a number is made of: no I, L or O to mistake for digits, no U. */
export const NUMBER_ALPHABET = ALPHANUMERIC.replace(/[ILOU]/g, '');

const PAYLOAD_LENGTH = 7;
const NUMBER_LENGTH = PAYLOAD_LENGTH + 2;
// Spaces of any width, hyphens, dashes, the full stop that ends a sentence, and the invisible marks that copying from a mail drags along.
const SEPARATORS = /[\s\p{Pd}\p{Cf}_.,]/gu;

/**
 * A new number without separators: kind letter, seven random characters, MOD 37-2 check character,
 * for instance 'J4K7QX290'. `randomBelow(n)` must give whole numbers from 0 to n - 1, from a
 * cryptographic source: the number alone opens the public status. Draws again while the check
 * character is * or one of the four letters left out.
 */
export function drawNumber(kind: NumberKind, randomBelow: (n: number) => number): string {
  for (let tries = 0; tries < 1000; tries += 1) {
    let payload: string = kind;
    for (let i = 0; i < PAYLOAD_LENGTH; i += 1) {
      payload += NUMBER_ALPHABET.charAt(randomBelow(NUMBER_ALPHABET.length));
    }
    const check = checkCharacter('mod-37-2', payload) ?? '*';
    if (payload.length === NUMBER_LENGTH - 1 && NUMBER_ALPHABET.includes(check)) return payload + check;
  }
  throw new RangeError('The random source gave no usable number in a thousand draws');
}

/**
 * Reads what a person typed or a scanner sent: case, spaces and hyphens do not matter, O counts as 0,
 * I and L as 1, and an address that ends in the number is read for it. ' j-4k7q x290 ' gives 'J4K7QX290'.
 * Refuses with the first reason met: empty, length, kind, character, check.
 */
export function readNumber(text: string): NumberReading {
  const [address = '', ...extras] = text.split(/[?#]/);
  const pieces = [...split(address), ...extras.toReversed().flatMap(split)];
  for (const piece of pieces) {
    const reading = readPiece(piece);
    if (reading.ok) return reading;
  }
  const first = pieces[0];
  return first === undefined ? { ok: false, reason: 'empty' } : readPiece(first);
}

// The pieces of an address, last one first, since the number stands at its end.
function split(text: string): string[] {
  return text
    .split(/[/&=]/)
    .filter((piece) => strip(piece) !== '')
    .reverse();
}

function strip(text: string): string {
  return text.normalize('NFKC').replace(SEPARATORS, '').toUpperCase();
}

function readPiece(piece: string): NumberReading {
  const plain = strip(piece);
  const number = plain.replaceAll('O', '0').replace(/[IL]/g, '1');
  if (number.length !== NUMBER_LENGTH) return { ok: false, reason: 'length' };
  const kind = number.charAt(0);
  if (!isKind(kind)) return { ok: false, reason: 'kind' };
  for (const character of number) {
    if (!NUMBER_ALPHABET.includes(character)) return { ok: false, reason: 'character' };
  }
  if (!hasValidCheck('mod-37-2', number)) return { ok: false, reason: 'check' };
  return { ok: true, kind, number };
}

function isKind(letter: string): letter is NumberKind {
  return letter === 'J' || letter === 'Q' || letter === 'W' || letter === 'C';
}

/** A stored number in groups for reading: 'J4K7QX290' becomes 'J-4K7Q-X290'. */
export function showNumber(number: string): string {
  return `${number.slice(0, 1)}-${number.slice(1, 5)}-${number.slice(5)}`;
}

/** A number from an address, however it was typed there, as it is printed; what is no number stays as it is. */
export function showTyped(text: string): string {
  const reading = readNumber(text);
  return reading.ok ? showNumber(reading.number) : text;
}

/**
 * What a person is told when a number could not be read; a wrong character is never called "not found". The example is of the
 * kind that is asked for.
 */
export function explainReading(reason: NumberFault, example = 'J-4K7Q-X290'): string {
  switch (reason) {
    case 'empty':
      return 'Type the number from your packing slip, message or certificate.';
    case 'length':
      return `A number has nine letters and digits, for example ${example}. Some are missing or there are too many.`;
    case 'kind':
      return 'The number starts with J for a job, Q for a quote, W for a certificate or C for a claim. Check the first letter.';
    case 'character':
      return 'One character looks wrong: a number has only digits and letters, and never the letter U. Compare it with your paper.';
    case 'check':
      return 'One character looks wrong. Compare the number with your paper, one character at a time.';
  }
}
