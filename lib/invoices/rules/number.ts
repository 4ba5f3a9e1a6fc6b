/**
 * The number of an invoice or credit note: one series a year, without a gap (VAT Directive 2006/112/EC Art. 226(2)).
 * invoiceNumber(2026, 7) -> '2026-00007'; past 99,999 it grows by a digit. Refuses what is no year or no place in it.
 */
export function invoiceNumber(year: number, sequence: number): string {
  if (!Number.isInteger(year) || year < 1000 || year > 9999) throw new RangeError(`Not a year: ${year}`);
  if (!Number.isInteger(sequence) || sequence < 1)
    throw new RangeError(`Not a place in a series: ${sequence}`);
  return `${year}-${String(sequence).padStart(5, '0')}`;
}

/** True for text that has the form of an invoice number. */
export function isInvoiceNumber(text: string): boolean {
  return /^\d{4}-\d{5,9}$/.test(text);
}
