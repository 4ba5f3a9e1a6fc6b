import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawQuote } from '@/lib/documents/quote';
import { jobByNumber } from '@/lib/jobs/job-by-number';
import { jobQuoteData } from '@/lib/quotes/quote-data';

/** The newest price of the job. */
export async function GET(_request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff();
  const job = await jobByNumber((await params).number);
  const data = job ? await jobQuoteData(job) : null;
  if (!data) return nothingHere();
  return servePdf(await drawQuote(data), `quote-${data.number}-${data.revision}`);
}
