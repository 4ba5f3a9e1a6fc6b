import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { invoiceByNumber } from '../../../open-invoice';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const whole = await invoiceByNumber((await params).number);
  if (!whole) return nothingHere();
  return servePdf(await invoiceFile(whole), `${whole.facts.kind}-${whole.facts.number}`);
}
