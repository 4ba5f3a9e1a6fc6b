import type { Stage } from './stages';

/** The stages that the moves lead to by which `isRepaired` decides: a query may leave out every other event. */
export const REPAIRED_BY_MOVES_TO: readonly Stage[] = ['ready', 'declined', 'on-bench'];

/**
 * Whether a unit goes back, or went back, repaired: its checks passed, and after them came no no, no withdrawal, and no work that was
 * opened again. A second look that ends as the first leaves a repair that was already done as it is. Events in their order.
 */
export function isRepaired(
  events: readonly { readonly fromStage: string | null; readonly toStage: string | null }[],
): boolean {
  const proved = events.findLastIndex((event) => event.fromStage === 'proving' && event.toStage === 'ready');
  return (
    proved >
    events.findLastIndex(
      ({ fromStage, toStage }) => toStage === 'declined' || (fromStage === 'ready' && toStage === 'on-bench'),
    )
  );
}
