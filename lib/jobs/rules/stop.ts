/** Why a unit goes back unrepaired without an answer from its customer's page. */
export const STOPS = ['customer-asked', 'cannot-repair'] as const;
export type Stop = (typeof STOPS)[number];

/** What staff choose from, and what follows from it. */
export const STOP_WORDS: Record<Stop, { label: string; consequence: string }> = {
  'customer-asked': {
    label: 'The customer asked for it back',
    consequence: 'On the telephone, or in a letter. They owe what a no to a changed price costs.',
  },
  'cannot-repair': {
    label: 'We cannot repair it',
    consequence: 'The way back is free. An inspection fee that was agreed to stays owed.',
  },
};

/**
 * Whether a unit that its customer asked back goes by their right to withdraw instead: a wish to have it back is a withdrawal
 * whatever it is called (Directive 2011/83/EU Art. 11(1)(b)), so that nobody pays more for having said it to somebody. `fees` is what
 * a stop would cost, `owed` what a withdrawal would, both minor units; null where there is no right, or not any more.
 *
 * goesByWithdrawal('customer-asked', { fees: 960, owed: 0 }) -> true
 */
export function goesByWithdrawal(why: Stop, o: { fees: number; owed: number | null }): boolean {
  return why === 'customer-asked' && o.owed !== null && o.owed < o.fees;
}

export const WITHDRAWAL_INSTEAD =
  'They may still withdraw from the contract, and owe less by it: write it down as that, under “They told us their answer”.';
