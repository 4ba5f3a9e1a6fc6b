import { nothingHere, servePdf } from '@/app/serve-file';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { readWholeInvoice } from '@/lib/invoices/records';
import { jobOfToken } from '../../open-job';

type Context = { params: Promise<{ token: string; number: string }> };

/** An invoice or credit note of the job that the private link opens, and of no other. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { token, number } = await params;
  const job = await jobOfToken(token);
  if (!job?.invoices.some((paper) => paper.number === number)) return nothingHere();
  const whole = await readWholeInvoice(number);
  if (!whole) return nothingHere();
  return servePdf(await invoiceFile(whole), `${whole.facts.kind}-${number}`);
}
