import type { Tx } from '@/lib/db/transaction';
import { exponentOf } from '@/lib/money/currency';
import { Refusal } from '@/lib/outcome';

/**
 * The currency, null without a row of settings. Locks the row: whoever books or sends a price holds it (readHeldWorkshop),
 * so no money is said in the old currency while it changes.
 */
export async function currencyForChange(tx: Tx): Promise<string | null> {
  const [row] = await tx.$queryRaw<{ currency: string }[]>`
    SELECT "currency" FROM "workshop" WHERE "id" = 1 FOR UPDATE`;
  return row?.currency ?? null;
}

/**
 * Moves what is kept to another currency. Figures stay as they are, and requests that have no price yet are asked in the
 * new one. Refuses once money was said or taken, and where the two have other numbers of decimals while figures are kept:
 * each is a number of minor units, and £2.50 would become ¥250.
 */
export async function writeCurrency(tx: Tx, { from, to }: { from: string; to: string }): Promise<void> {
  if (await isMoneySaid(tx)) {
    throw refused(
      `Customers were told prices in ${from}, or units were booked or paid for in it, so the currency can no longer change`,
    );
  }
  if (exponentOf(from) !== exponentOf(to) && (await hasFigures(tx))) {
    throw refused(
      `${to} has ${decimals(to)} and ${from} has ${decimals(from)}, so prices, costs of parts and limits of carriers entered so far would become wrong. Take the policies, the catalogue and the check sheets out as files, start with an empty data folder, choose ${to} and enter the parts there first, and bring the files in in that order with the catalogue’s currency and prices changed`,
    );
  }
  await tx.quote.updateMany({ where: { revisions: { none: {} } }, data: { currency: to } });
}

async function isMoneySaid(tx: Tx): Promise<boolean> {
  const counts = [
    await tx.quoteRevision.count({ take: 1 }),
    await tx.job.count({ take: 1 }),
    await tx.payment.count({ take: 1 }),
    await tx.invoice.count({ take: 1 }),
  ];
  return counts.some((count) => count > 0);
}

async function hasFigures(tx: Tx): Promise<boolean> {
  const counts = [
    await tx.repair.count({ take: 1 }),
    await tx.lot.count({ where: { unitCostMinor: { gt: 0 } }, take: 1 }),
    await tx.carrier.count({ where: { maxValueMinor: { gt: 0 } }, take: 1 }),
  ];
  return counts.some((count) => count > 0);
}

function refused(sentence: string): Refusal {
  return new Refusal('conflict', sentence, 'currency');
}

function decimals(currency: string): string {
  const count = exponentOf(currency);
  return count === 0 ? 'no decimals' : `${count} decimals`;
}
