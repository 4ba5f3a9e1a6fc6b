import { nothingHere, serveFile } from '@/app/serve-file';
import { drawQuote } from '@/lib/documents/quote';
import { askedQuoteData } from '@/lib/quotes/quote-data';
import { quoteOfToken } from '../open-quote';

export async function GET(
  _request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const { token } = await params;
  const quote = await quoteOfToken(token);
  const data = quote ? await askedQuoteData(quote, { token }) : null;
  if (!data) return nothingHere();
  return serveFile(await drawQuote(data), {
    type: 'application/pdf',
    name: `quote-${data.number}-${data.revision}.pdf`,
  });
}
