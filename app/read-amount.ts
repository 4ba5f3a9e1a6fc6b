import 'server-only';
import { keptMoneySentence, readKeptMoney } from '@/lib/money/read-kept-money';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';

/** An amount typed in the workshop's currency, in minor units; refused at its field when it is none. */
export async function readAmount(text: string, field: string, given?: string): Promise<number> {
  const currency = given ?? (await readWorkshop()).currency;
  const reading = readKeptMoney(text, currency);
  if (!reading.ok) {
    const sentence = keptMoneySentence(reading.reason, currency, 'Enter the amount like 96.00');
    throw new Refusal('invalid', sentence, field);
  }
  return reading.minor;
}
