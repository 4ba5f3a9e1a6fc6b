import { nothingHere, serveFile } from '@/app/serve-file';
import { drawReceipt } from '@/lib/documents/receipt';
import { receiptData } from '@/lib/invoices/receipt-data';
import { readWorkshop } from '@/lib/workshop/records';
import { jobOfToken } from '../open-job';

type Context = { params: Promise<{ token: string }> };

export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const job = await jobOfToken((await params).token);
  const data = job && (await receiptData(job, await readWorkshop()));
  if (!job || !data) return nothingHere();
  return serveFile(await drawReceipt(data), { type: 'application/pdf', name: `receipt-${job.number}.pdf` });
}
