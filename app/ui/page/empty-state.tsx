import type { ReactNode } from 'react';

/**
 * One sentence where a list would be, and if there is one the thing to do about it.
 *
 * ```tsx
 * <EmptyState>No parcels are expected today. Bookings appear here on the day their promise starts.</EmptyState>
 * ```
 */
export function EmptyState({ children }: { children: ReactNode }) {
  return <p className="empty">{children}</p>;
}
