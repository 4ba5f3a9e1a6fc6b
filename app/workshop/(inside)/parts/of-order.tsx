import { RadioGroup } from '@/app/ui/forms/choices';
import { stillToCome } from '@/lib/bench/rules/on-order';
import type { StoredOrder } from '@/lib/bench/stored-orders';
import { formatDay } from '@/lib/calendar/format';

/**
 * Asks which open order pieces came of, the next one expected first; nothing where none is open. A delivery is taken to be of that
 * one. Pieces that are added may have been found at a count: there nothing is ticked, since what an order was counted as having come
 * cannot be taken back.
 */
export function OfOrder(props: { orders: readonly StoredOrder[]; locale: string; isDelivery: boolean }) {
  const { orders, locale, isDelivery } = props;
  const [next] = orders;
  if (!next) return null;
  return (
    <RadioGroup
      name="order"
      label="Of which order"
      hint={
        isDelivery
          ? 'What is still to come of it stays on order.'
          : 'Pieces found at a count came of none. What is still to come of an order stays on order.'
      }
      defaultValue={isDelivery ? next.id : undefined}
      choices={[
        ...orders.map((order) => ({
          value: order.id,
          label: `${stillToCome(order)} from ${order.supplier}, ordered ${formatDay(order.orderedOn, locale, 'short')}`,
        })),
        { value: 'none', label: 'Of none of them' },
      ]}
    />
  );
}
