import type { RepairForQuote } from '@/lib/catalogue/staff-records';
import { Refusal } from '@/lib/outcome';
import { bookedLine, type QuoteLine } from '@/lib/quotes/rules/lines';
import { readPriceLines } from '../../../price-lines/read-price-lines';
import type { Tax } from '../../../price-lines/taxes';

type Asked = {
  repair: RepairForQuote;
  takePrice: boolean;
  taxes: readonly Tax[];
  currency: string;
};

/** The lines of a quote as they were typed, after the price of the catalogue where that is taken. */
export function readLines(formData: FormData, o: Asked): QuoteLine[] {
  const lines = [...(o.takePrice ? [bookedLine(o.repair)] : []), ...readPriceLines(formData, o)];
  if (lines.length > 0) return lines;
  throw new Refusal('invalid', 'Give at least one line, or take the price of the catalogue', 'description-0');
}
