/** The Luhn check digit of a row of digits (ISO/IEC 7812-1 Annex B), or null for anything else: '7992739871' gives 3. */
export function luhnDigit(payload: string): number | null {
  if (!/^\d+$/.test(payload)) return null;
  let sum = 0;
  let isDoubled = true;
  for (let i = payload.length - 1; i >= 0; i -= 1) {
    const digit = Number(payload.charAt(i));
    const doubled = digit * 2;
    sum += isDoubled ? (doubled > 9 ? doubled - 9 : doubled) : digit;
    isDoubled = !isDoubled;
  }
  return (10 - (sum % 10)) % 10;
}

/** True when the last digit is the Luhn digit of the others. */
export function isLuhn(text: string): boolean {
  return text.length > 1 && luhnDigit(text.slice(0, -1)) === Number(text.slice(-1)) && /\d$/.test(text);
}

/**
 * True for fifteen digits whose last is the Luhn digit (3GPP TS 23.003 Annex B). The sixteen digits
 * of an IMEISV carry no check digit, so they are no IMEI here.
 */
export function isImei(text: string): boolean {
  return /^\d{15}$/.test(text) && isLuhn(text);
}
