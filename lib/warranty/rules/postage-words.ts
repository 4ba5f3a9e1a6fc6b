/** Told where a ruling covers something, until the postage was paid back. */
export const ASK_FOR_POSTAGE =
  'What did posting the unit to us cost you? We pay it back. Tell us how much it was and where to send it, with a photo of the receipt';

/** Told with every other ruling. */
export const POSTAGE_STAYS = 'What posting it to us cost you is paid back only where a claim is covered.';

/** Told wherever somebody is about to post a unit under a claim (lib/warranty/stored-ruling.ts decides when it is paid). */
export const KEEP_POSTAGE_RECEIPT =
  'You pay the postage to us. Keep the receipt: we pay it back when the claim is covered.';
