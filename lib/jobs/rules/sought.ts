import { type NumberFault, type NumberKind, readNumber } from '@/lib/numbers/job-number';
import { checkS10 } from '@/lib/numbers/s10';
import { foldSerial } from '@/lib/numbers/serial';
import { decodeCertificate } from '@/lib/warranty/rules/signature-payload';

/** What a person typed, or a scanner sent, into a field that takes anything. */
export type Sought =
  | { kind: 'nothing' }
  | { kind: 'number'; of: NumberKind; number: string }
  | {
      kind: 'text';
      text: string;
      /** capitals and digits only, for serials and references */
      key: string;
      /** set when it looks like one of our numbers, or a postal reference, with one character wrong */
      wrong: Extract<NumberFault, 'check' | 'character'> | 'reference' | null;
    };

/** The address in a certificate's code: a compact certificate and its signature of 64 bytes, as base64url. */
const CODE = /\/c\/([A-Za-z0-9_-]{90,4000})\/?$/;
const SIGNATURE_BYTES = 64;

/**
 * The signed part of the address in a certificate's code, or null; whether it is genuine is asked on its own page.
 *
 * codeIn('https://post.example.org/c/AbC…') -> 'AbC…'
 */
export function codeIn(text: string): string | null {
  return CODE.exec(text.trim())?.[1] ?? null;
}

/**
 * Reads a search: one of our numbers in any spelling or at the end of an address, the code of a certificate, or any other
 * text. The code is only read to find the number; whether it is genuine is asked on the certificate's own page.
 *
 * soughtFrom(' j-4k7q x290 ') -> { kind: 'number', of: 'J', number: 'J4K7QX290' }
 */
export function soughtFrom(typed: string): Sought {
  const text = typed.trim();
  if (text === '') return { kind: 'nothing' };
  const fromCode = certificateInCode(text);
  if (fromCode !== null) return { kind: 'number', of: 'W', number: fromCode };
  const reading = readNumber(text);
  if (reading.ok) return { kind: 'number', of: reading.kind, number: reading.number };
  return { kind: 'text', text, key: foldSerial(text), wrong: wrongIn(text, reading.reason) };
}

// What is before the last digits may be written with the country's code, with a nought, or not at all; nobody says fewer than
// six. E.164 numbers have at most fifteen digits.
const TELEPHONE = { shape: /^\+?[\d\s()./-]+$/, fewest: 6, kept: 7, most: 15 };

/**
 * The last digits of what may be a telephone number, by which two spellings of one are the same; null for anything else.
 *
 * telephoneIn('+44 20 7946 0123') and telephoneIn('(020) 7946-0123') -> '9460123'
 */
export function telephoneIn(text: string): string | null {
  const digits = text.replace(/\D/g, '');
  const isOne = TELEPHONE.shape.test(text.trim()) && digits.length >= TELEPHONE.fewest;
  return isOne && digits.length <= TELEPHONE.most ? digits.slice(-TELEPHONE.kept) : null;
}

function wrongIn(text: string, fault: NumberFault): Extract<Sought, { kind: 'text' }>['wrong'] {
  if (fault === 'check' || fault === 'character') return fault;
  const reference = checkS10(text);
  return reference.form === 's10' && !reference.valid && reference.reason === 'check-digit'
    ? 'reference'
    : null;
}

function certificateInCode(text: string): string | null {
  const code = codeIn(text);
  if (code === null) return null;
  try {
    const raw = atob(code.replaceAll('-', '+').replaceAll('_', '/'));
    const bytes = Uint8Array.from(raw, (character) => character.charCodeAt(0));
    return decodeCertificate(bytes.subarray(0, bytes.length - SIGNATURE_BYTES))?.number ?? null;
  } catch {
    // Not base64url after all: an address cut short by a scanner.
    return null;
  }
}
