import type { RequestState } from './request-states';

/** Who a quote that was asked for waits on, in the order in which the staff's list shows them. */
export const REQUEST_GROUPS = [
  { key: 'us', label: 'Wait on us', states: ['asked'] },
  { key: 'customer', label: 'Wait on the customer', states: ['questioned', 'quoted'] },
  { key: 'to-book', label: 'Accepted, not booked', states: ['accepted'] },
  { key: 'ended', label: 'Ended', states: ['booked', 'declined', 'lapsed', 'turned-down'] },
] as const satisfies readonly { key: string; label: string; states: readonly RequestState[] }[];

export type RequestGroup = (typeof REQUEST_GROUPS)[number]['key'];

/** The group a state belongs to: groupOf('quoted') is 'customer'. */
export function groupOf(state: RequestState): RequestGroup {
  const group = REQUEST_GROUPS.find(({ states }) => (states as readonly RequestState[]).includes(state));
  if (!group) throw new Error(`no group holds the state ${state}`);
  return group.key;
}

export type Stretch = { group: RequestGroup; skip: number; take: number };

/**
 * Which rows of which groups stand on one page of a list that shows the groups one after the other. Pages count from 1;
 * a page past the end holds nothing.
 *
 * stretchesOf([['us', 3], ['customer', 30]], { page: 1, size: 25 }) -> us 0 to 3, then customer 0 to 22
 */
export function stretchesOf(
  groups: readonly (readonly [RequestGroup, number])[],
  o: { page: number; size: number },
): Stretch[] {
  const from = (o.page - 1) * o.size;
  const to = from + o.size;
  let before = 0;
  return groups.flatMap(([group, count]) => {
    const skip = Math.max(0, from - before);
    const end = Math.min(count, to - before);
    before += count;
    return end > skip ? [{ group, skip, take: end - skip }] : [];
  });
}
