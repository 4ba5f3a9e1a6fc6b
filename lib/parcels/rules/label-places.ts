export type LabelPlaces = {
  /** 0 is the left top place of the sheet */
  first: number;
  count: number;
};

/**
 * Where on a sheet labels begin and how many there are, from an address: places count from 1 for people. What is missing
 * or out of reach is taken as the first place and one label; null where no place is asked for.
 *
 * readPlaces(new URLSearchParams('place=4&count=2'), 27) -> { first: 3, count: 2 }
 */
export function readPlaces(asked: URLSearchParams, perSheet: number): LabelPlaces | null {
  if (!asked.has('place')) return null;
  const first = wholeFrom1(asked.get('place'), perSheet);
  return { first: first - 1, count: wholeFrom1(asked.get('count'), perSheet) };
}

function wholeFrom1(text: string | null, most: number): number {
  const value = /^\d{1,3}$/.test(text ?? '') ? Number(text) : 1;
  return value >= 1 && value <= most ? value : 1;
}
