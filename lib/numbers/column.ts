/** The largest whole number that an integer column keeps (PostgreSQL manual, Numeric Types: four bytes). */
export const LARGEST_KEPT = 2_147_483_647;

/**
 * True for a whole number that an integer column keeps; asked for any other, the database fails.
 *
 * isKept(-2147483647) -> true, isKept(2147483648) -> false, isKept(1.5) -> false
 */
export function isKept(number: number): boolean {
  return Number.isInteger(number) && Math.abs(number) <= LARGEST_KEPT;
}
