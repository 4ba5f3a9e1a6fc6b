import { drawInvoice } from '@/lib/documents/invoice';
import type { WorkshopCard } from '@/lib/workshop/card';
import { invoiceData } from './invoice-data';
import type { WholeInvoice } from './records';

/** The document of an invoice or credit note as bytes. */
export function drawPaper(
  whole: WholeInvoice,
  workshop: Pick<WorkshopCard, 'paper' | 'locale'>,
): Promise<Uint8Array> {
  return drawInvoice(invoiceData(whole, workshop));
}
