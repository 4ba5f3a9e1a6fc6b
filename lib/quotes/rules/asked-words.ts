/** Whether a price answers a request for one. A changed price of a job proposes no repair, and one of the list neither. */
export function isAskedFor({ proposal }: { proposal: string }): boolean {
  return proposal !== '';
}

/** Whether a job was booked at a price that was asked for, and not from the price list. */
export function isBookedAtQuote(job: {
  quotes: readonly { revisions: readonly { proposal: string }[] }[];
}): boolean {
  return job.quotes[0]?.revisions.some(isAskedFor) ?? false;
}

/**
 * The cover beside a price that was asked for. An inspection proves no repair and gets no certificate: what it names is the cover
 * of the repair that may follow.
 *
 * coverBeside('12 months on work and parts', true) -> 'of the repair, if you say yes to one: 12 months on work and parts'
 */
export function coverBeside(cover: string, isInspection: boolean): string {
  return isInspection ? `of the repair, if you say yes to one: ${cover}` : cover;
}

export type AskedWords = {
  question: string;
  /** what the button of a yes says, and what stands under it */
  yes: string;
  consequence: string;
  /** what a yes leads to, kept with the price */
  onYes: string;
  /** what the price is for, and when it is paid */
  isFor: 'repair' | 'inspection';
  paid: string;
};

/**
 * The words of a price that was asked for: of the repair, or of the inspection alone, which sells no repair. `price` is
 * the amount with tax as text.
 *
 * askedWords(true, '£18.00').question -> 'Shall we inspect it for £18.00?'
 */
export function askedWords(isInspection: boolean, price: string): AskedWords {
  if (isInspection) {
    return {
      isFor: 'inspection',
      question: `Shall we inspect it for ${price}?`,
      yes: `Yes, inspect it for ${price}`,
      consequence: `You agree to the lines above, ${price} with tax, under our terms. Next you book and post the unit. No repair is agreed to yet: you get a price for it after the inspection.`,
      onYes:
        'You book in a few short steps and post the unit. We inspect it and send you a price for the repair. You say yes or no to that then.',
      paid: 'to pay before the unit goes back',
    };
  }
  return {
    isFor: 'repair',
    question: `Shall we repair it for ${price}?`,
    yes: `Yes, repair it for ${price}`,
    consequence: `You agree to the lines above, ${price} with tax, under our terms. Next you book and post the unit; you pay when the repair is done.`,
    onYes: 'You book the repair in a few short steps, post the unit, and pay when the repair is done.',
    paid: 'to pay when the repair is done',
  };
}
