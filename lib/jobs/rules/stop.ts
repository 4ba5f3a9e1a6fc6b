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
