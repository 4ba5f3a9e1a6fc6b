import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { drawQuote } from '@/lib/documents/quote';
import { jobQuoteData } from '@/lib/quotes/quote-data';
import { jobOfToken } from '../open-job';

/** The newest price of the job. */
export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const { token } = await params;
  const job = await jobOfToken(token);
  const data = job ? await jobQuoteData(job, { token }) : null;
  if (!data) return nothingHere();
  return servePdf(await drawQuote(data), `quote-${data.number}-${data.revision}`);
}
