/**
 * The check digit of a GTIN, SSCC or GLN: weights 3 and 1 from the right (GS1 General Specifications 7.9),
 * or null for anything but digits. '890400021003' gives 7.
 */
export function gs1Digit(payload: string): number | null {
  if (!/^\d+$/.test(payload)) return null;
  let sum = 0;
  for (let i = 0; i < payload.length; i += 1) {
    const digit = Number(payload.charAt(payload.length - 1 - i));
    sum += i % 2 === 0 ? digit * 3 : digit;
  }
  return (10 - (sum % 10)) % 10;
}

/** True when the last digit is the GS1 check digit of the others. */
export function isGs1(text: string): boolean {
  return /^\d{2,}$/.test(text) && gs1Digit(text.slice(0, -1)) === Number(text.slice(-1));
}
