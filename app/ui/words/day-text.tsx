import type { Day } from '@/lib/calendar/day';
import { type DayStyle, formatDay } from '@/lib/calendar/format';

/**
 * A calendar day in words; customers read the weekday form.
 *
 * ```tsx
 * <DayText day={day('2026-12-03')} locale="en-GB" />   // Thursday 3 December 2026
 * ```
 */
export function DayText(props: { day: Day; locale: string; style?: DayStyle | undefined }) {
  return (
    <time dateTime={props.day} className="day-text">
      {formatDay(props.day, props.locale, props.style ?? 'weekday')}
    </time>
  );
}
