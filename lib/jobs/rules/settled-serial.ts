type Told = { kind: string };

/**
 * The first event by which a person settled the serial of the unit that is here. What was settled before an arrival that was taken
 * back was of another unit. Events come in their order.
 */
export function firstSettled<E extends Told>(events: readonly E[]): E | undefined {
  const arrived = events.findLastIndex(({ kind }) => kind === 'unit-arrived');
  return events.slice(arrived + 1).find(({ kind }) => kind === 'serial-settled');
}
