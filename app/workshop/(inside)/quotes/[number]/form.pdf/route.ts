import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawRepairForm } from '@/lib/documents/repair-form';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import { repairFormData } from '@/lib/quotes/repair-form-data';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff('take-in');
  const quote = await quoteByNumber((await params).number);
  const data = quote ? await repairFormData(quote) : null;
  if (!data) return nothingHere();
  return servePdf(await drawRepairForm(data), `repair-form-${data.number}-${data.revision}`);
}
