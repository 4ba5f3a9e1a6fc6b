import { nothingHere, type OfNumber, serveFile } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { ublProblems, ublText } from '@/lib/invoices/rules/ubl';
import { invoiceByNumber } from '../../../open-invoice';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const whole = await invoiceByNumber((await params).number);
  if (!whole || ublProblems(whole.paper).length > 0) return nothingHere();
  return serveFile(new TextEncoder().encode(ublText(whole.paper)), {
    type: 'application/xml',
    name: `${whole.facts.kind}-${whole.facts.number}.xml`,
    download: true,
  });
}
