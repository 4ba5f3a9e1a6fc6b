import { TextLink } from '@/app/ui/page/text-link';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay, formatMonth } from '@/lib/calendar/format';
import type { SinceFile } from '@/lib/invoices/since-files';
import type { WorkshopCard } from '@/lib/workshop/card';

/** Asks for the month of the journal; the answer is a file. Those of payments entered later can be had again. */
export function JournalForm(o: { month: string; files: readonly SinceFile[]; workshop: WorkshopCard }) {
  const { month, files } = o;
  const { locale, timeZone } = o.workshop;
  return (
    <section aria-labelledby="journal" className="mt-12">
      <h2 id="journal">For the bookkeeper</h2>
      <p>
        Every invoice, credit note and payment of a month as a table: net and tax by rate, rounding, and what
        was received. Credit notes and money given back are below zero, so each column adds up. Take a month
        when it is over: payments of it that are entered later are then listed here, with a file of their own.
        To look something up, take a month again as often as you like; that list stays as it is.
      </p>
      <form action="/workshop/money/journal.csv" method="get" className="mt-3 max-w-lg">
        <label htmlFor="journal-month" className="field-label">
          Month
        </label>
        <p className="field-hint" id="journal-month-hint">
          Year and month, like 2026-11
        </p>
        <span className="field-line">
          <input
            id="journal-month"
            name="month"
            type="month"
            className="field-box"
            pattern="\d{4}-\d{2}"
            required
            defaultValue={month}
            aria-describedby="journal-month-hint"
          />
          <button type="submit" className="button button-second">
            Get the journal (CSV)
          </button>
        </span>
      </form>
      {files.length > 0 ? (
        <details className="mt-3">
          <summary>Files of payments entered later, to get again</summary>
          <ul>
            {files.map((file) => (
              <li key={file.id}>
                <TextLink href={`/workshop/money/journal.csv?month=${file.month}&again=${file.id}`} file>
                  {`${formatMonth(file.month, locale, 'long')}, taken on ${formatDay(dayInZone(file.at, timeZone), locale, 'short')} (CSV)`}
                </TextLink>
                {file.payments === 1 ? ': 1 payment' : `: ${file.payments} payments`}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </section>
  );
}
