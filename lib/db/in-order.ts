type Order = ({ at: 'asc' | 'desc' } | { id: 'asc' | 'desc' })[];

/** Rows as they were written. Those of one instant stand by their ids, which grow with time (UUID 7, RFC 9562). */
export const inOrder: Order = [{ at: 'asc' }, { id: 'asc' }];

/** The row written last comes first. */
export const newestFirst: Order = [{ at: 'desc' }, { id: 'desc' }];
