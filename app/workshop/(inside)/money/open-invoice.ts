import 'server-only';
import { readWholeInvoice, type WholeInvoice } from '@/lib/invoices/records';
import { isInvoiceNumber } from '@/lib/invoices/rules/number';

/** The invoice or credit note an address names, or null. */
export async function invoiceByNumber(text: string): Promise<WholeInvoice | null> {
  return isInvoiceNumber(text) ? readWholeInvoice(text) : null;
}
