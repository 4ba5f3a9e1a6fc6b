/** Photos that one form about a unit may bring, besides the one of its serial. */
export const MOST_PHOTOS = 6;

/** Photos that a customer may send with all messages about one job. */
export const MOST_PHOTOS_OF_MESSAGES = 24;
