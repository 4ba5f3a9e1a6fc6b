/** How often one caller may send a claim's form. */
export const CLAIM_LIMIT = { max: 20, windowSeconds: 600 };
/** Copies of a lost certificate: asked for by one caller, and to one address, so that nobody's mailbox is filled. */
export const LOST_LIMIT = { max: 10, windowSeconds: 600 };
export const LOST_ADDRESS_LIMIT = { max: 5, windowSeconds: 3600 };
