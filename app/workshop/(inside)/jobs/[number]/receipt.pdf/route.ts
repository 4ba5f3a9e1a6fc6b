import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawReceipt } from '@/lib/documents/receipt';
import { receiptData } from '@/lib/invoices/receipt-data';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { readWorkshop } from '@/lib/workshop/records';

export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  const data = job && (await receiptData(job, await readWorkshop()));
  if (!job || !data) return nothingHere();
  return servePdf(await drawReceipt(data), `receipt-${job.number}`);
}
