import 'server-only';
import { z } from 'zod';
import type { RepairForQuote } from '@/lib/catalogue/staff-records';
import { readMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { bookedLine, OFFERED_KINDS, type QuoteLine } from '@/lib/quotes/rules/lines';
import { type Tax, taxValue } from '../../../jobs/[number]/price/taxes';
import { QUOTE_LINES } from '../schema';

const kindOf = z.enum(OFFERED_KINDS);

type Asked = {
  repair: RepairForQuote;
  takePrice: boolean;
  taxes: readonly Tax[];
  currency: string;
};

/**
 * The lines of a quote as they were typed, after the price of the catalogue where that is taken. A line with a text and
 * no amount, or the other way, is refused at its field.
 */
export function readLines(formData: FormData, o: Asked): QuoteLine[] {
  const lines: QuoteLine[] = o.takePrice ? [bookedLine(o.repair)] : [];
  for (let index = 0; index < QUOTE_LINES; index += 1) {
    const line = readTyped(formData, index, o);
    if (line) lines.push(line);
  }
  if (lines.length === 0)
    throw new Refusal(
      'invalid',
      'Give at least one line, or take the price of the catalogue',
      'description-0',
    );
  return lines;
}

function readTyped(formData: FormData, index: number, o: Asked): QuoteLine | null {
  const typed = (name: string) => {
    const value = formData.get(`${name}-${index}`);
    return typeof value === 'string' ? value.trim() : '';
  };
  const description = typed('description');
  const amount = typed('amount');
  if (description === '' && amount === '') return null;
  if (description === '') throw new Refusal('invalid', 'Say what this line is for', `description-${index}`);
  const reading = readMoney(amount, o.currency);
  if (!reading.ok) throw new Refusal('invalid', 'Enter the amount like 24.00', `amount-${index}`);
  const kind = kindOf.safeParse(typed('kind'));
  if (!kind.success) throw new Refusal('invalid', 'Choose the kind of this line', `kind-${index}`);
  const tax = o.taxes.find((each) => taxValue(each) === typed('tax'));
  if (!tax) throw new Refusal('invalid', 'Choose the tax of this line', `tax-${index}`);
  return {
    kind: kind.data,
    description: description.slice(0, 200),
    amount: kind.data === 'discount' ? -Math.abs(reading.minor) : reading.minor,
    category: tax.category,
    rateBps: tax.rateBps,
  };
}
