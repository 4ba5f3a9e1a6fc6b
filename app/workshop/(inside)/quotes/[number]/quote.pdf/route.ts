import { nothingHere, type OfNumber, servePdf } from '@/app/serve-file';
import { requireStaff } from '@/app/workshop/who';
import { drawQuote } from '@/lib/documents/quote';
import { quoteByNumber } from '@/lib/quotes/quote-by-number';
import { askedQuoteData } from '@/lib/quotes/quote-data';

/** The newest price of a quote; ?revision=2 gives a certain one. */
export async function GET(request: Request, { params }: OfNumber): Promise<Response> {
  await requireStaff('take-in');
  const quote = await quoteByNumber((await params).number);
  const asked = new URL(request.url).searchParams.get('revision');
  const data = quote ? await askedQuoteData(quote, asked === null ? {} : { revision: Number(asked) }) : null;
  if (!data) return nothingHere();
  return servePdf(await drawQuote(data), `quote-${data.number}-${data.revision}`);
}
