import { nothingHere, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { invoiceFile } from '@/lib/invoices/invoice-file';
import { invoiceByNumber } from '../../../open-invoice';

type Context = { params: Promise<{ number: string }> };

export async function GET(_request: Request, { params }: Context): Promise<Response> {
  await requireStaff();
  const whole = await invoiceByNumber((await params).number);
  if (!whole) return nothingHere();
  return serveFile(await invoiceFile(whole), {
    type: 'application/pdf',
    name: `${whole.facts.kind}-${whole.facts.number}.pdf`,
  });
}
