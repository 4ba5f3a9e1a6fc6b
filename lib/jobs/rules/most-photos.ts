/** Photos that one form about a unit may bring, besides the one of its serial. */
export const MOST_PHOTOS = 6;
