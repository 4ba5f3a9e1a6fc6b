import { TextLink } from '@/app/ui/page/text-link';
import type { Day } from '@/lib/calendar/day';
import { dayFromDate } from '@/lib/calendar/day';
import { formatMonth } from '@/lib/calendar/format';
import { takenMonths } from '@/lib/invoices/list-entered-since';
import { isMonthOver } from '@/lib/invoices/rules/journal';

type Props = {
  payments: readonly { receivedOn: Date; takingId: string | null }[];
  today: Day;
  locale: string;
};

/** Says of payments that were entered too late for the journal of their month how they reach the bookkeeper. */
export async function JournalNote({ payments, today, locale }: Props) {
  const months = payments
    .filter(({ takingId }) => takingId === null)
    .map(({ receivedOn }) => dayFromDate(receivedOn).slice(0, 7))
    .filter((month) => isMonthOver(month, today));
  const taken = await takenMonths([...new Set(months)]);
  if (taken.length === 0) return null;
  return (
    <p>
      {`A payment here was entered after the journal of ${taken.map((month) => formatMonth(month, locale, 'long')).join(', ')} was taken. The bookkeeper gets it as a file of its own, under `}
      <TextLink href="/workshop/money">Money</TextLink>.
    </p>
  );
}
