/** Told wherever somebody is about to post a unit under a claim (lib/warranty/stored-ruling.ts decides when it is paid). */
export const KEEP_POSTAGE_RECEIPT =
  'You pay the postage to us. Keep the receipt: we pay it back when the claim is covered.';
