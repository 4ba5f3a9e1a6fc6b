import { checkCharacter, hasValidCheck } from '@/lib/numbers/iso7064';

/** An IBAN without spaces and in capitals: 'de71 1102 2033' is 'DE7111022033'. */
export function foldIban(text: string): string {
  return text.replace(/\s+/g, '').toUpperCase();
}

/**
 * True for an IBAN whose form and check digits hold (ISO 13616: two letters, two check digits, up to 30 letters and digits;
 * MOD 97-10 of ISO/IEC 7064 once the first four stand last). Spaces are ignored. The length each country gives its account
 * numbers is not looked at. isIban('DE71 1102 2033 0123 4567 89') is true.
 */
export function isIban(text: string): boolean {
  const iban = foldIban(text);
  if (!/^[A-Z]{2}\d{2}[A-Z0-9]{11,30}$/.test(iban)) return false;
  return hasValidCheck('mod-97-10', iban.slice(4) + iban.slice(0, 4));
}

/** An IBAN in groups of four, as it is printed. */
export function showIban(iban: string): string {
  return foldIban(iban).replace(/(.{4})(?=.)/g, '$1 ');
}

/** True for a BIC by its form alone (ISO 9362): bank, country, place, and three characters for a branch where it has one. */
export function isBic(text: string): boolean {
  return /^[A-Z0-9]{4}[A-Z]{2}[A-Z0-9]{2}([A-Z0-9]{3})?$/.test(text);
}

/**
 * The structured creditor reference of an invoice or job number (ISO 11649): 'RF', two check digits by MOD 97-10, and the
 * number without its separators. Refuses what leaves no or more than 21 letters and digits.
 *
 * creditorReference('539007547034') -> 'RF18539007547034'
 */
export function creditorReference(number: string): string {
  const payload = number.toUpperCase().replace(/[^A-Z0-9]/g, '');
  const check = payload.length > 21 ? null : checkCharacter('mod-97-10', `${payload}RF`);
  if (payload === '' || check === null) throw new RangeError(`No reference can be made of ${number}`);
  return `RF${check}${payload}`;
}
