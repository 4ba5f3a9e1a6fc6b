import 'server-only';
import { cache } from 'react';
import { findQuoteByToken } from '@/lib/jobs/private-link';
import { type QuoteRecord, readQuote } from '@/lib/quotes/records';

/** The quote a private link opens, once for each request; null for a token that opens nothing. */
export const quoteOfToken = cache(async (token: string): Promise<QuoteRecord | null> => {
  const found = await findQuoteByToken(token);
  return found ? readQuote({ id: found.quoteId }) : null;
});
