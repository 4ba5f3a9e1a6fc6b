/** Photos that one form about a unit may bring, besides the one of its serial. */
export const MOST_PHOTOS = 6;

/** Photos of the receipt for the postage of a claim. */
export const MOST_RECEIPTS = 3;

/** Photos that a customer may send with all messages about one job. */
export const MOST_PHOTOS_OF_MESSAGES = 24;
