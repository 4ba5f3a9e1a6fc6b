import { decimalText } from '@/lib/money/amount';
import { hasValidCheck } from '@/lib/numbers/iso7064';
import { foldIban, isBic, isIban } from './bank';

export type EpcTransfer = {
  name: string;
  iban: string;
  /** empty where the bank is found by the IBAN alone */
  bic: string;
  currency: string;
  /** cents */
  amount: number;
  /** a creditor reference by ISO 11649, or plain words; never both */
  remittance: { reference: string } | { text: string };
};

export type EpcReading =
  | { ok: true; text: string }
  | { ok: false; reason: 'currency' | 'amount' | 'name' | 'iban' | 'bic' | 'remittance' | 'length' };

const MOST_CENTS = 99_999_999_999;
const MOST_BYTES = 331;

/**
 * The text of a QR code that fills in a SEPA credit transfer, by the European Payments Council's guideline EPC069-12:
 * service tag, version 002, character set 1 (UTF-8), SCT, BIC, name, IBAN, amount, purpose, reference or text, one a line,
 * with nothing after the last one that is given. Drawn at recovery level M it stays within version 13 of ISO/IEC 18004,
 * which is 331 bytes. Refuses another currency than the euro, amounts outside 0.01 to 999999999.99, a name of none or more
 * than 70 characters, an IBAN or reference whose check digits fail, a text of more than 140.
 *
 * 12.30 EUR to DE71110220330123456789 -> 'BCD\n002\n1\nSCT\n\nQuay & Alder\nDE71110220330123456789\nEUR12.30\n\nRF…'
 */
export function epcText(o: EpcTransfer): EpcReading {
  const name = oneLine(o.name);
  if (o.currency !== 'EUR') return { ok: false, reason: 'currency' };
  if (!Number.isSafeInteger(o.amount) || o.amount < 1 || o.amount > MOST_CENTS)
    return { ok: false, reason: 'amount' };
  if (name === '' || characters(name) > 70) return { ok: false, reason: 'name' };
  if (!isIban(o.iban)) return { ok: false, reason: 'iban' };
  if (o.bic !== '' && !isBic(o.bic)) return { ok: false, reason: 'bic' };
  const reference = 'reference' in o.remittance ? o.remittance.reference : '';
  const words = 'text' in o.remittance ? oneLine(o.remittance.text) : '';
  if (reference !== '' && !isCreditorReference(reference)) return { ok: false, reason: 'remittance' };
  if (characters(words) > 140) return { ok: false, reason: 'remittance' };
  const elements = [
    'BCD',
    '002',
    '1',
    'SCT',
    o.bic,
    name,
    foldIban(o.iban),
    `EUR${decimalText(o.amount, 'EUR')}`,
    '',
    reference,
    words,
  ];
  const text = elements.join('\n').trimEnd();
  if (new TextEncoder().encode(text).length > MOST_BYTES) return { ok: false, reason: 'length' };
  return { ok: true, text };
}

function isCreditorReference(text: string): boolean {
  // Checked as an IBAN is, with its first four characters last (ISO 11649).
  return /^RF\d{2}[A-Z0-9]{1,21}$/.test(text) && hasValidCheck('mod-97-10', text.slice(4) + text.slice(0, 4));
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

function characters(text: string): number {
  return [...text].length;
}
