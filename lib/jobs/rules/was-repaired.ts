/**
 * Whether a unit goes back repaired: it was proved, and its price was not turned down after that.
 *
 * wasRepaired(['arrived', 'assessing', 'declined', 'ready']) -> false
 *
 * @param reached the stages of a job in the order it came to them; events that moved nothing are null
 */
export function wasRepaired(reached: readonly (string | null)[]): boolean {
  return reached.lastIndexOf('proving') > reached.lastIndexOf('declined');
}
