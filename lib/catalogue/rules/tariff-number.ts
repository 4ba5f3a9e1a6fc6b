/**
 * A tariff number without the dots and spaces it is often written with: '8527.13 00' is '85271300'. Six digits are the same in
 * every country of the Harmonized System (World Customs Organization; from memory), more are a country's own, twelve at most.
 * Null for anything else; nothing typed is an empty one.
 */
export function readTariffNumber(text: string): string | null {
  const digits = text.replace(/[ .]/g, '');
  return digits === '' || /^\d{6,12}$/.test(digits) ? digits : null;
}
