import { isUniqueViolation } from '@/lib/db/errors';
import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { blankWorkshop } from './card';
import { forgetCalendars } from './records';
import type { SettingsPart } from './settings-input';

/**
 * Saves one part of the settings. `seenAt` is the `updatedAt` of the row that the form was drawn from: of two owners
 * who save at once the first wins, and the second is told, because the row count of the conditional write decides.
 *
 * Refuses another currency once amounts in the present one exist: every stored amount is a number of its minor units.
 */
export async function saveSettings(part: SettingsPart, seenAt: Date): Promise<void> {
  try {
    await transaction(async (tx) => {
      const row = await tx.workshop.findUnique({ where: { id: 1 }, select: { currency: true } });
      if (row) {
        await refuseCurrencyInUse(tx, part, row.currency);
        const { count } = await tx.workshop.updateMany({ where: { id: 1, updatedAt: seenAt }, data: part });
        if (count === 0) throw savedMeanwhile();
        return;
      }
      const { updatedAt: _, ...blank } = blankWorkshop;
      await tx.workshop.create({ data: { ...blank, ...part } });
    });
  } catch (error) {
    if (isUniqueViolation(error)) throw savedMeanwhile();
    throw error;
  }
  forgetCalendars();
}

function savedMeanwhile(): Refusal {
  return new Refusal(
    'conflict',
    'Somebody saved the settings while you had this page open. Nothing of yours was saved.',
  );
}

async function refuseCurrencyInUse(tx: Tx, part: SettingsPart, present: string): Promise<void> {
  if (!('currency' in part) || part.currency === present) return;
  const inUse =
    (await tx.quote.count()) +
    (await tx.payment.count()) +
    (await tx.repair.count()) +
    (await tx.lot.count({ where: { unitCostMinor: { gt: 0 } } })) +
    (await tx.carrier.count({ where: { maxValueMinor: { gt: 0 } } }));
  if (inUse === 0) return;
  throw new Refusal(
    'conflict',
    `Prices, quotes, costs of parts or limits of carriers are kept in ${present} already, so the currency can no longer change`,
    'currency',
  );
}
