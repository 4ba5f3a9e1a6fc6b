import type { CostOfNo } from './after-no';

export type OfferWords = {
  heading: string;
  onYes: string;
  onNo: string;
  /** what the buttons say */
  yes: string;
  no: string;
  /** what the customer agrees to or declines by pressing them; kept with the answer */
  agreed: string;
  declined: string;
};

/**
 * The words of a price on a running job, before the answer and kept with it. Amounts are minor units with tax; `money` writes
 * one. The first price is that of a unit which came without a booking; an order is a yes that makes the contract, as that one
 * and the first price on a claim that covers nothing are. Where the customer may withdraw and did not ask for an early start,
 * work begins after `startAfter`: a day, or the period that the yes begins. Without a cost of the no, nothing is sent back, because part of
 * the claim is covered and gets repaired. After an inspection at a price of its own nothing was repaired yet: this price is the
 * first of the repair, and in place of the inspection's, whose fee it holds or takes off.
 *
 * offerWords({ gross: 6000, before: 4600, … }, money).agreed
 *   -> 'I agree to £60.00 with tax for this repair, instead of £46.00.'
 */
export function offerWords(
  o: {
    isFirst: boolean;
    isOrder: boolean;
    /** what is agreed so far is for the inspection alone */
    isAfterInspection?: boolean;
    /** the repair of the catalogue that the job is put under by a yes; null or absent where it stays under its own */
    repair?: string | null;
    gross: number;
    before: number;
    cost: CostOfNo;
    startAfter: string | null;
  },
  money: (minor: number) => string,
): OfferWords {
  if (o.cost === null) return restWords(money(o.gross), money(0));
  const back = money(o.cost.inspectionFee + o.cost.returnFee);
  const price = money(o.gross);
  const what = o.repair ? `the repair “${o.repair}”` : 'this repair';
  const shared = {
    onNo: `We send the unit back unrepaired. You pay ${back}.`,
    no: `No, send it back for ${back}`,
  };
  if (o.isFirst || o.isAfterInspection) {
    return {
      ...shared,
      heading: `Price: ${price}`,
      onYes:
        o.startAfter === null
          ? 'We repair it at this price. You pay when it is done.'
          : `We repair it at this price, ${whenWorkGoesOn(o.startAfter)}. You pay when it is done.`,
      // A button that orders says that it costs something (Directive 2011/83/EU Art. 8(2)).
      yes: `Yes, repair it and pay ${price}`,
      agreed: o.isFirst
        ? `I agree to ${price} with tax for ${what}, under the terms.`
        : `I agree to ${price} with tax for ${what}. The ${money(o.before)} for the inspection is not added to it.`,
      declined: `I decline this price and ask for the unit back unrepaired for ${back}.`,
    };
  }
  return {
    ...shared,
    heading: `New price: ${price}`,
    onYes: `We go on with the repair ${whenWorkGoesOn(o.startAfter)}, at the new price.`,
    yes: o.isOrder ? `Yes, repair it and pay ${price}` : `Yes, repair it for ${price}`,
    agreed: o.isOrder
      ? `I agree to ${price} with tax for ${what}, under the terms.`
      : `I agree to ${price} with tax for ${what}, instead of ${money(o.before)}.`,
    declined: `I decline the new price and ask for the unit back unrepaired for ${back}. I can book it in again later.`,
  };
}

export type YesAfterNo = Pick<OfferWords, 'onYes' | 'yes' | 'agreed'>;

/**
 * The words of a yes to a price that the customer had declined, in place of what a no costs (`back`); amounts are minor units
 * with tax, and an order is a yes that makes the contract.
 */
export function yesAfterNoWords(
  o: { isOrder: boolean; repair: string | null; gross: number; back: number; startAfter: string | null },
  money: (minor: number) => string,
): YesAfterNo {
  const price = money(o.gross);
  const what = o.repair ? `the repair “${o.repair}”` : 'this repair';
  return {
    onYes: `We repair it after all, ${whenWorkGoesOn(o.startAfter)}, at this price. You pay when it is done.`,
    // A button that orders says that it costs something (Directive 2011/83/EU Art. 8(2)).
    yes: `Yes, repair it after all and pay ${price}`,
    agreed: o.isOrder
      ? `I said no to this price before. I now agree to ${price} with tax for ${what}, under the terms.`
      : `I said no to this price before. I now agree to ${price} with tax for ${what}, instead of the unit back unrepaired for ${money(o.back)}.`,
  };
}

/** When work goes on after a yes, beside the box that asks for an early start. */
function whenWorkGoesOn(startAfter: string | null): string {
  return startAfter === null ? 'at once' : `after ${startAfter}, or at once if you ask us to`;
}

function restWords(price: string, nothing: string): OfferWords {
  return {
    heading: `Price for the rest: ${price}`,
    onYes: 'We repair both parts in one go.',
    onNo: `We repair the covered part for ${nothing} and leave the rest as it is.`,
    yes: `Yes, repair the rest too for ${price}`,
    agreed: `I agree to ${price} with tax for the rest. The covered part stays free (${nothing}).`,
    no: `No, only the covered part, for ${nothing}`,
    declined: `I decline the price for the rest. Please repair the covered part for ${nothing}.`,
  };
}
