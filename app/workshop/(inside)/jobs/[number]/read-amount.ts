import 'server-only';
import { readKeptMoney } from '@/lib/money/read-kept-money';
import { Refusal } from '@/lib/outcome';
import { readWorkshop } from '@/lib/workshop/records';

/** An amount typed in the workshop's currency, in minor units; refused at its field when it is none. */
export async function readAmount(text: string, field: string, currency?: string): Promise<number> {
  const reading = readKeptMoney(text, currency ?? (await readWorkshop()).currency);
  if (!reading.ok) throw new Refusal('invalid', 'Enter the amount like 96.00', field);
  return reading.minor;
}
