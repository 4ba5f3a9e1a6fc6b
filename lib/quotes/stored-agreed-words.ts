import { dayFromDate } from '@/lib/calendar/day';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import type { QuoteRecord } from './records';
import { agreedWords } from './rules/agreed-words';
import { coverBeside } from './rules/asked-words';
import { isInspectionOnly } from './rules/inspection-fee';
import { shownLines } from './rules/lines';
import { readConditions } from './stored-conditions';
import { readLine } from './stored-lines';

/** The words of a customer's answer to one sent price, from the records: what a page or a caller says is never taken for them. */
export function readAgreedWords(
  quote: QuoteRecord,
  offer: QuoteRecord['revisions'][number],
  { decision, afterNoTo, locale }: { decision: 'accepted' | 'declined'; afterNoTo?: number; locale: string },
): string {
  const { returnFeeMinor, isInspectionFeeTakenOff } = readConditions(offer);
  return agreedWords(decision, {
    number: quote.number,
    revision: offer.revision,
    lines: shownLines(offer.lines.map(readLine)),
    isGross: offer.isGross,
    gross: offer.grossMinor,
    validUntil: dayFromDate(offer.validUntil),
    cover: offer.policyVersion && coverBeside(coverWords(offer.policyVersion), isInspectionOnly(offer)),
    returnFee: returnFeeMinor,
    isTakenOff: isInspectionFeeTakenOff && isInspectionOnly(offer),
    afterNoTo,
    currency: quote.currency,
    locale,
  });
}
