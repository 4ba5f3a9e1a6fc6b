import { readNumber } from '@/lib/numbers/job-number';
import { type QuoteRecord, readQuote } from './records';

/** The quote an address names, in any spelling of its number; null when there is none that was asked for. */
export async function quoteByNumber(text: string): Promise<QuoteRecord | null> {
  const reading = readNumber(text);
  return reading.ok && reading.kind === 'Q' ? readQuote({ number: reading.number }) : null;
}
