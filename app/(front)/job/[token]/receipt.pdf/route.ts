import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { drawReceipt } from '@/lib/documents/receipt';
import { receiptData } from '@/lib/invoices/receipt-data';
import { readWorkshop } from '@/lib/workshop/records';
import { jobOfToken } from '../open-job';

export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const job = await jobOfToken((await params).token);
  const data = job && (await receiptData(job, await readWorkshop()));
  if (!job || !data) return nothingHere();
  return servePdf(await drawReceipt(data), `receipt-${job.number}`);
}
