import { nothingHere, serveFile } from '@/app/serve-file';
import { drawRepairForm } from '@/lib/documents/repair-form';
import { repairFormData } from '@/lib/quotes/repair-form-data';
import { quoteOfToken } from '../open-quote';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const { token } = await params;
  const quote = await quoteOfToken(token);
  const data = quote ? await repairFormData(quote, { token }) : null;
  if (!data) return nothingHere();
  return serveFile(await drawRepairForm(data), {
    type: 'application/pdf',
    name: `repair-form-${data.number}-${data.revision}.pdf`,
  });
}
