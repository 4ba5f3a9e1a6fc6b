import { inOrderOfDay, type OpenOrder, stillToCome } from '@/lib/bench/rules/on-order';
import { compareDays, type Day } from '@/lib/calendar/day';

/** A job that waits for pieces of a part, or is on the bench with them not taken yet. */
export type Waiting = {
  id: string;
  /** it is on the bench: what it waited for has come, and is for it */
  isOnBench: boolean;
  promisedOn: Day | null;
  /** pieces it has not taken yet */
  open: number;
};

/** What one job gets of a part. */
export type PiecesFor = {
  open: number;
  /** pieces in stock that are for it */
  here: number;
  /** all it waits for is here or still to come of an open order */
  isOnOrder: boolean;
  /** the day of the order with which the last of its pieces comes; null where none does, or nobody said when */
  comesOn: Day | null;
};

/** Pieces that a job still waits for: as many as it said, less what it has taken from then on. */
export function openPieces(
  quantity: number,
  uses: readonly { quantity: number; at: Date }[],
  since: Date | null,
): number {
  const taken = uses.filter(({ at }) => since === null || at >= since);
  return Math.max(
    0,
    taken.reduce((left, use) => left - use.quantity, quantity),
  );
}

/**
 * The pieces of a part that are for one of the jobs that wait for it. Each takes its own of the stock, then of the open orders by
 * their day: those on the bench first, then by promise, so that nobody is told the day of pieces that are for another.
 * Example: two jobs wait for one display each, one is ordered for 3 December and one for 20 December: the job that was promised
 * later gets the 20th.
 */
export function piecesFor(
  id: string,
  o: {
    waiting: readonly Waiting[];
    inStock: number;
    orders: readonly Omit<OpenOrder, 'partId'>[];
  },
): PiecesFor {
  const line = o.waiting.toSorted(byTurn);
  const turn = line.findIndex((job) => job.id === id);
  const open = line[turn]?.open ?? 0;
  const ahead = line.slice(0, turn).reduce((sum, job) => sum + job.open, 0);
  const here = Math.min(open, Math.max(0, o.inStock - ahead));
  let missing = ahead + open - o.inStock;
  if (missing <= 0) return { open, here, isOnOrder: false, comesOn: null };
  for (const order of inOrderOfDay(o.orders)) {
    missing -= stillToCome(order);
    if (missing <= 0) return { open, here, isOnOrder: true, comesOn: order.expectedOn };
  }
  return { open, here, isOnOrder: false, comesOn: null };
}

function byTurn(a: Waiting, b: Waiting): number {
  if (a.isOnBench !== b.isOnBench) return a.isOnBench ? -1 : 1;
  if (a.promisedOn === null || b.promisedOn === null)
    return Number(a.promisedOn === null) - Number(b.promisedOn === null) || compareIds(a.id, b.id);
  return compareDays(a.promisedOn, b.promisedOn) || compareIds(a.id, b.id);
}

function compareIds(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}
