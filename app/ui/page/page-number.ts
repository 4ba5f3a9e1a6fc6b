/** Far behind the last page of any list, and still a number that PostgreSQL can skip to. */
const LAST = 100_000;

/**
 * The page of a list that an address asks for: a whole number from 1 to 100,000. Whatever else stands there counts as the
 * first page, and a larger number as the last, since an address is typed by anybody.
 *
 * pageNumber('3') -> 3, pageNumber('-1') -> 1, pageNumber('9007199254740993') -> 100000
 */
export function pageNumber(asked: unknown): number {
  return Math.min(LAST, Math.max(1, Math.trunc(Number(asked)) || 1));
}
