import type { Tx } from '@/lib/db/transaction';
import { formatMoney } from '@/lib/money/amount';
import { Refusal } from '@/lib/outcome';
import { agreedRevision, readQuote } from '@/lib/quotes/records';
import { bookedLine, revisionTotals } from '@/lib/quotes/rules/lines';
import { readConditions } from '@/lib/quotes/stored-conditions';
import { taxCategory } from '@/lib/quotes/stored-lines';
import { newestVersion } from '@/lib/warranty/records';
import type { WorkshopCard } from '@/lib/workshop/card';

type OfferedRepair = {
  name: string;
  priceMinor: number;
  taxCategory: string;
  taxRateBps: number;
  isListed: boolean;
  model: { isListed: boolean };
  policy: { versions: readonly { id: string }[] };
};

/**
 * What a booking agrees to: the price list's own price with the terms of today, or that of a quote the customer said yes to
 * with the terms that it was sent with.
 *
 * Refuses as a conflict where it is not what the customer read above the button (`shownMinor`, all lines with tax):
 * nobody is bound to a price that they have not seen.
 */
export async function bookedPrice(
  tx: Tx,
  o: { repair: OfferedRepair; quoteId: string | null; workshop: WorkshopCard; shownMinor: number },
) {
  const { grossMinor, ...agreed } =
    o.quoteId === null ? listPrice(o.repair, o.workshop) : await agreedPrice(tx, o.quoteId);
  if (grossMinor === o.shownMinor) return agreed;
  const money = (minor: number) => formatMoney(minor, o.workshop.currency, o.workshop.locale);
  throw new Refusal(
    'conflict',
    `The price is now ${money(grossMinor)}, and not the ${money(o.shownMinor)} that you saw. Nothing is booked yet. Your answers are kept: press the button once more if you agree to the new price.`,
  );
}

function listPrice(repair: OfferedRepair, workshop: WorkshopCard) {
  if (!repair.isListed || !repair.model.isListed)
    throw new Refusal('conflict', 'This repair is not on the price list any more. Nothing is booked.');
  const line = bookedLine({ ...repair, taxCategory: taxCategory.parse(repair.taxCategory) });
  const { gross } = revisionTotals([line], workshop.pricesIncludeTax);
  const price = {
    lines: [line],
    isGross: workshop.pricesIncludeTax,
    isInspectionFeeTakenOff: workshop.isInspectionFeeTakenOff,
    reason: 'Booked from the price list',
    agreedText: `${repair.name} at ${formatMoney(gross, workshop.currency, workshop.locale)} with tax, under the terms of the day.`,
    currency: workshop.currency,
    validDays: workshop.approvalDays,
    timeZone: workshop.timeZone,
  };
  const promised = {
    returnFeeMinor: workshop.returnFeeMinor,
    policyVersionId: newestVersion(repair.policy).id,
  };
  return { price, promised, grossMinor: gross };
}

/** The quote's row stays locked until the booking is written. */
async function agreedPrice(tx: Tx, quoteId: string) {
  await tx.$queryRaw`SELECT 1 FROM "quote" WHERE "id" = ${quoteId} FOR UPDATE`;
  const quote = await readQuote({ id: quoteId }, tx);
  const agreed = quote && agreedRevision(quote);
  if (!quote || !agreed) throw new Refusal('conflict', 'The price for this booking is not agreed any more.');
  const { grossMinor } = agreed;
  const { returnFeeMinor, policyVersionId } = readConditions(agreed);
  return {
    price: { agreed: { quoteId, quoteNumber: quote.number, grossMinor } },
    promised: { returnFeeMinor, policyVersionId },
    grossMinor,
  };
}
