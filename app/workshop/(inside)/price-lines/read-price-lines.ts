import { z } from 'zod';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import { Refusal } from '@/lib/outcome';
import { OFFERED_KINDS, type QuoteLine } from '@/lib/quotes/rules/lines';
import { MOST_LINES } from './line-places';
import { type Tax, taxValue } from './taxes';

const kindOf = z.enum(OFFERED_KINDS);

type Asked = {
  /** the first is the one of a line that chose none, as where there is only one to choose */
  taxes: readonly Tax[];
  currency: string;
};

/**
 * The filled lines of a price as they were typed into OfferLine. A line with a text and no amount, or the other way, is
 * refused at its field.
 */
export function readPriceLines(formData: FormData, o: Asked): QuoteLine[] {
  return Array.from({ length: MOST_LINES }, (_, index) => readTyped(formData, index, o)).flatMap(
    (line) => line ?? [],
  );
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
  const reading = readKeptMoney(amount, o.currency);
  if (!reading.ok) {
    const sentence = keptMoneySentence(reading.reason, o.currency, 'Enter the amount like 24.00');
    throw new Refusal('invalid', sentence, `amount-${index}`);
  }
  const kind = kindOf.safeParse(typed('kind'));
  if (!kind.success) throw new Refusal('invalid', 'Choose the kind of this line', `kind-${index}`);
  const chosen = typed('tax');
  const tax = chosen === '' ? o.taxes[0] : o.taxes.find((each) => taxValue(each) === chosen);
  if (!tax) throw new Refusal('invalid', 'Choose the tax of this line', `tax-${index}`);
  return {
    kind: kind.data,
    description: description.slice(0, 200),
    amount: kind.data === 'discount' ? -Math.abs(reading.minor) : reading.minor,
    category: tax.category,
    rateBps: tax.rateBps,
  };
}
