import type { Stamp } from '@/app/ui/docket/stamps';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import type { QuoteRecord } from '@/lib/quotes/records';
import { requestRun } from '@/lib/quotes/rules/request-run';

/** The run of stamps of a quote as the docket draws it, with dates in the workshop's zone. */
export function quoteStamps(quote: QuoteRecord, o: { locale: string; timeZone: string }): Stamp[] {
  return requestRun(quote.request.state, quote.events).map(({ at, ...step }) => ({
    ...step,
    on: at ? formatDay(dayInZone(at, o.timeZone), o.locale, 'short') : undefined,
  }));
}
