import { exponentOf, symbolOf } from './currency';

export type MoneyReading =
  | { ok: true; minor: number }
  | { ok: false; reason: 'format' | 'decimals' | 'range' };

const PLAIN = /^(?=.*\d)(\d*)(?:([.,])(\d*))?$/;
const GROUPED = /^(\d{1,3}([., '])\d{3}(?:\2\d{3})*)(?:([.,])(\d+))?$/;

/**
 * Reads a typed amount in a currency as minor units: '14.50', '14,50', '1,234.50', "1'234.50", '1 234,50', '£14.50' and
 * '14.50 GBP' all work, with at most as many decimals as the currency has. Refuses rather than guesses: '1,234' in EUR
 * may be one euro or a thousand ('decimals'), '12 50' and the sign of another currency are no amount ('format'), and what
 * leaves the safe integers is 'range'. Throws on an unknown currency.
 */
export function readMoney(text: string, currency: string): MoneyReading {
  const exponent = exponentOf(currency);
  const { isNegative, figures } = unwrap(text, currency);
  const parts = splitDecimals(figures, exponent);
  if (parts === null) return { ok: false, reason: 'format' };
  if (parts.decimals.length > exponent) return { ok: false, reason: 'decimals' };
  const magnitude = Number(parts.whole + parts.decimals.padEnd(exponent, '0'));
  if (!Number.isSafeInteger(magnitude)) return { ok: false, reason: 'range' };
  return {
    ok: true,
    minor: isNegative && magnitude > 0 ? -magnitude : magnitude,
  };
}

// Takes the sign and one mention of the currency off, whichever comes first.
function unwrap(text: string, currency: string): { isNegative: boolean; figures: string } {
  const plain = text
    .normalize('NFKC')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\u2019/g, "'")
    .replace(/\s+/g, ' ')
    .toUpperCase();
  const marks = [currency, symbolOf(currency).normalize('NFKC').toUpperCase()];
  const mark = marks.find((candidate) => plain.includes(candidate));
  const bare = (mark ? plain.replace(mark, '') : plain).trim();
  return bare.startsWith('-')
    ? { isNegative: true, figures: bare.slice(1).trim() }
    : { isNegative: false, figures: bare };
}

function splitDecimals(figures: string, exponent: number): { whole: string; decimals: string } | null {
  const plain = PLAIN.exec(figures);
  if (plain) {
    const [, whole = '', mark, decimals = ''] = plain;
    const mayBeGroup = decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
    // Without decimals in the currency, three digits after a mark can only be a group of thousands.
    if (mayBeGroup && exponent === 0) return { whole: whole + decimals, decimals: '' };
    // With three of them, a comma may be either; the point is the decimal mark of ISO 4217 tables and of this program's files.
    if (mayBeGroup && exponent >= 3 && mark === ',') return null;
    return { whole, decimals };
  }
  const grouped = GROUPED.exec(figures);
  if (!grouped) return null;
  const [, whole = '', group, mark, decimals = ''] = grouped;
  return group === mark ? null : { whole: whole.replace(/\D/g, ''), decimals };
}
