import { nothingHere, type OfToken, servePdf } from '@/app/serve-file';
import { drawQuote } from '@/lib/documents/quote';
import { askedQuoteData } from '@/lib/quotes/quote-data';
import { quoteOfToken } from '../open-quote';

export async function GET(_request: Request, { params }: OfToken): Promise<Response> {
  const { token } = await params;
  const quote = await quoteOfToken(token);
  const data = quote ? await askedQuoteData(quote, { token }) : null;
  if (!data) return nothingHere();
  return servePdf(await drawQuote(data), `quote-${data.number}-${data.revision}`);
}
