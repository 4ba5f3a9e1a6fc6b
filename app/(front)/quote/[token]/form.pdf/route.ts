import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { drawRepairForm } from '@/lib/documents/repair-form';
import { repairFormData } from '@/lib/quotes/repair-form-data';
import { quoteOfToken } from '../open-quote';

export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const { token } = await params;
  const quote = await quoteOfToken(token);
  const data = quote ? await repairFormData(quote, { token }) : null;
  if (!data) return nothingHere();
  return servePdf(await drawRepairForm(data), `repair-form-${data.number}-${data.revision}`);
}
