import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextField } from '@/app/ui/forms/text-field';
import { Timeline } from '@/app/ui/page/timeline';
import { expectedWords, movedWords, stillToCome } from '@/lib/bench/rules/on-order';
import type { StoredOrder } from '@/lib/bench/stored-orders';
import type { Day } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { endOrderAction, expectOrderAction } from './actions';
import { OrderOneForm } from './order/ordered-form';

type Props = {
  part: { id: string; name: string };
  orders: readonly StoredOrder[];
  /** who delivered the part so far */
  suppliers: readonly string[];
  today: Day;
  zone: string;
  locale: string;
  mayWork: boolean;
  staff: ReadonlyMap<string, { name: string }>;
};

/** Open orders of a part: from whom, since when and until when; another day, that nothing more comes, or a further order. */
export function OrdersPart({ part, orders, suppliers, today, zone, locale, mayWork, staff }: Props) {
  if (orders.length === 0 && !mayWork) return null;
  return (
    <section aria-labelledby="on-order" className="mt-10 max-w-text">
      <h2 id="on-order" className="mb-3">
        On order
      </h2>
      {orders.length === 0 ? (
        <p className="mb-3">Nothing of it is on order.</p>
      ) : (
        <ul className="plain-list">
          {orders.map((order) => (
            <li key={order.id} className="mb-6">
              <p>{`${orderWords(order, locale)}; ${expectedWords(order.expectedOn, { today, locale })}.`}</p>
              <Moves order={order} staff={staff} zone={zone} locale={locale} />
              {mayWork ? <OrderForms order={order} about={orderWords(order, locale)} /> : null}
            </li>
          ))}
        </ul>
      )}
      {mayWork ? <OrderOneForm part={part} suppliers={suppliers} today={today} /> : null}
    </section>
  );
}

/** Who said another day, and when; nothing where it was never moved. */
function Moves({
  order,
  staff,
  zone,
  locale,
}: { order: StoredOrder } & Pick<Props, 'staff' | 'zone' | 'locale'>) {
  if (order.moves.length === 0) return null;
  return (
    <Timeline
      label={`Moves of ${orderWords(order, locale)}`}
      entries={order.moves.toReversed().map((move) => ({
        key: move.id,
        dateTime: move.at.toISOString(),
        on: formatInstant(move.at, { locale, zone }),
        who: staff.get(move.userId)?.name,
        what: `Moved ${movedWords(move, locale)}`,
      }))}
    />
  );
}

function OrderForms({ order, about }: { order: StoredOrder; about: string }) {
  return (
    <>
      <ActionForm
        action={expectOrderAction.bind(null, order.partId, order.id)}
        label={`Another day: ${about}`}
        summary="It comes on another day"
      >
        <TextField
          name="expectedOn"
          label="Expected on"
          type="date"
          width="half"
          optional
          defaultValue={order.expectedOn ?? ''}
        />
        <SubmitButton
          label="Keep this day"
          kind="second"
          about={about}
          consequence="Jobs that wait for the part go by it. No mail."
        />
      </ActionForm>
      <ActionForm
        action={endOrderAction.bind(null, order.partId, order.id)}
        hidden={{ came: order.came }}
        label={`Nothing more comes: ${about}`}
      >
        <ConfirmButton
          label="Nothing more comes"
          question="Does nothing more come of this order?"
          confirm="Yes, end it"
          consequence="The order list asks for what is missing again. What was booked in stays."
        />
      </ActionForm>
    </>
  );
}

/** '6 of 10 from Gannet Parts, ordered 25 Nov 2026'. */
function orderWords(order: StoredOrder, locale: string): string {
  const pieces = order.came === 0 ? String(order.quantity) : `${stillToCome(order)} of ${order.quantity}`;
  return `${pieces} from ${order.supplier}, ordered ${formatDay(order.orderedOn, locale, 'short')}`;
}
