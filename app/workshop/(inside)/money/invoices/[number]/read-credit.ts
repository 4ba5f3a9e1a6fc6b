import { creditField } from '@/lib/invoices/rules/credit';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import { Refusal } from '@/lib/outcome';

export type CreditChoice = 'everything' | ReadonlyMap<number, number>;

/**
 * What the form asks to take off: everything that is left, or minor units by the position of a line. Amounts beside "everything" say
 * two things at once; since a credit note is kept for good, that is refused at the choice, as an amount that is none is at its own.
 */
export function readCredit(
  choice: 'everything' | 'lines',
  invoice: { currency: string; lines: readonly { position: number }[] },
  formData: FormData,
): CreditChoice {
  const filled = invoice.lines.flatMap(({ position }) => {
    const typed = formData.get(creditField(position));
    return typeof typed === 'string' && typed.trim() !== '' ? [{ position, typed }] : [];
  });
  if (choice === 'everything') {
    if (filled.length > 0) throw new Refusal('invalid', BOTH, 'choice');
    return 'everything';
  }
  return new Map(
    filled.map(({ position, typed }) => [position, readAmount(typed, position, invoice.currency)]),
  );
}

const BOTH = 'You entered amounts of single lines. Choose those here, or empty them to take everything off.';

function readAmount(typed: string, position: number, currency: string): number {
  const reading = readKeptMoney(typed, currency);
  if (reading.ok) return reading.minor;
  const sentence = keptMoneySentence(reading.reason, currency, 'Enter the amount like 96.00');
  throw new Refusal('invalid', sentence, creditField(position));
}
