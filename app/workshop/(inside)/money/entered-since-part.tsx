import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay, formatMonth } from '@/lib/calendar/format';
import type { EnteredSince } from '@/lib/invoices/list-entered-since';
import { formatMoney } from '@/lib/money/amount';
import type { WorkshopCard } from '@/lib/workshop/card';

/** Payments that no journal has, although that of their month was taken; nothing at all where there are none. */
export function EnteredSincePart({
  rows,
  workshop,
}: {
  rows: readonly EnteredSince[];
  workshop: WorkshopCard;
}) {
  if (rows.length === 0) return null;
  const { locale, timeZone } = workshop;
  return (
    <Notice kind="warn" heading="Entered after the journal was taken">
      <p>
        The bookkeeper does not have these payments yet. Hand them the file; the row leaves this list then,
        and the file can be had again under “For the bookkeeper”.
      </p>
      <ul>
        {rows.map((row) => (
          <li key={`${row.month} ${row.currency}`}>
            {`${formatMonth(row.month, locale, 'long')}, taken on ${formatDay(dayInZone(row.takenAt, timeZone), locale, 'short')}: ${row.payments === 1 ? '1 payment' : `${row.payments} payments`}, ${formatMoney(row.amount, row.currency, locale)}. `}
            <TextLink href={`/workshop/money/journal.csv?month=${row.month}&part=since`} file>
              {`Get them (CSV, ${formatMonth(row.month, locale, 'long')})`}
            </TextLink>
          </li>
        ))}
      </ul>
    </Notice>
  );
}
