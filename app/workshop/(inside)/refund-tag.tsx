import { Tag } from '@/app/ui/page/tag';
import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { refundDaysLate } from '@/lib/invoices/rules/owed-back';

/** By when money has to be given back, or how late it is. */
export function RefundTag({ dueOn, today, locale }: { dueOn: Day; today: Day; locale: string }) {
  const late = refundDaysLate(dueOn, today);
  return late > 0 ? (
    <Tag tone="stop">{late === 1 ? '1 day late' : `${late} days late`}</Tag>
  ) : (
    <Tag tone="now">{`by ${formatDay(dueOn, locale, 'short')}`}</Tag>
  );
}
