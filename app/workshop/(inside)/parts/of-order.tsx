import { RadioGroup } from '@/app/ui/forms/choices';
import { stillToCome } from '@/lib/bench/rules/on-order';
import type { StoredOrder } from '@/lib/bench/stored-orders';
import { formatDay } from '@/lib/calendar/format';

/** Asks which open order pieces came of, the next one expected first; nothing where none is open. */
export function OfOrder({ orders, locale }: { orders: readonly StoredOrder[]; locale: string }) {
  const [next] = orders;
  if (!next) return null;
  return (
    <RadioGroup
      name="order"
      label="Of which order"
      hint="What is still to come of it stays on order."
      defaultValue={next.id}
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
