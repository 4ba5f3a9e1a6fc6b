import { isCountryCode } from './countries';

export type S10Fault = 'check-digit' | 'country' | 'service';
export type S10Check = { form: 's10'; valid: boolean; reason?: S10Fault } | { form: 'other' };

const FORM = /^([A-Z])[A-Z](\d{8})(\d)([A-Z]{2})$/;
const WEIGHTS = [8, 6, 4, 2, 3, 5, 9, 7] as const;
// Service indicators that begin so are reserved: no post assigns them.
const RESERVED_SERVICES = 'JKSTW';

/** The S10 check digit of an eight-digit serial, or null for anything else: '47312482' gives 9. */
export function s10Digit(serial: string): number | null {
  if (!/^\d{8}$/.test(serial)) return null;
  const sum = WEIGHTS.reduce((total, weight, i) => total + weight * Number(serial.charAt(i)), 0);
  const rest = 11 - (sum % 11);
  if (rest === 10) return 0;
  return rest === 11 ? 5 : rest;
}

/**
 * Checks a carrier reference that has the form of a postal item identifier (UPU S10): two letters of service, eight digits,
 * a check digit, two letters of country; case and spaces do not matter. Every other form is 'other': not checked, not wrong.
 * 'RR 47312482 9 GB' is valid; 'RB123456785XX' is not, because XX is no country.
 */
export function checkS10(text: string): S10Check {
  const match = FORM.exec(text.replace(/[\s-]/g, '').toUpperCase());
  if (!match) return { form: 'other' };
  const [, service = '', serial = '', digit = '', country = ''] = match;
  if (s10Digit(serial) !== Number(digit)) return invalid('check-digit');
  if (!isCountryCode(country)) return invalid('country');
  if (RESERVED_SERVICES.includes(service)) return invalid('service');
  return { form: 's10', valid: true };
}

function invalid(reason: S10Fault): S10Check {
  return { form: 's10', valid: false, reason };
}
