import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { blankWorkshop } from './card';
import { forgetCalendars } from './records';
import type { SettingsPart } from './settings-input';
import { currencyForChange, writeCurrency } from './write-currency';

/**
 * Saves one part of the settings. `seenAt` is the `updatedAt` of the row that the form was drawn from: of two owners
 * who save at once the first wins, and the second is told, because the row count of the conditional write decides.
 *
 * Refuses another currency once money was said or taken in the present one (lib/workshop/write-currency.ts).
 */
export async function saveSettings(part: SettingsPart, seenAt: Date): Promise<{ isNewCurrency: boolean }> {
  try {
    const saved = await transaction((tx) => write(tx, part, seenAt));
    forgetCalendars();
    return saved;
  } catch (error) {
    if (isUniqueViolation(error)) throw savedMeanwhile();
    throw error;
  }
}

async function write(tx: Tx, part: SettingsPart, seenAt: Date): Promise<{ isNewCurrency: boolean }> {
  const present = await currencyForChange(tx);
  const currency = 'currency' in part ? part.currency : (present ?? blankWorkshop.currency);
  const isNewCurrency = currency !== (present ?? blankWorkshop.currency);
  if (isNewCurrency) await writeCurrency(tx, { from: present ?? blankWorkshop.currency, to: currency });
  if (present !== null) {
    const { count } = await tx.workshop.updateMany({ where: { id: 1, updatedAt: seenAt }, data: part });
    if (count === 0) throw savedMeanwhile();
    return { isNewCurrency };
  }
  const { updatedAt: _, ...blank } = blankWorkshop;
  await tx.workshop.create({ data: { ...blank, ...part } });
  return { isNewCurrency };
}

function savedMeanwhile(): Refusal {
  return new Refusal(
    'conflict',
    'Somebody saved the settings while you had this page open. Nothing of yours was saved.',
  );
}
