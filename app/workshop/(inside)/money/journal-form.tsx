/** Asks for the month of the journal; the answer is a file. */
export function JournalForm({ month }: { month: string }) {
  return (
    <section aria-labelledby="journal" className="mt-12">
      <h2 id="journal">For the bookkeeper</h2>
      <p>
        Every invoice, credit note and payment of a month as a table: net and tax by rate, rounding, and what
        was received. Credit notes and money given back are below zero, so each column adds up. Take a month
        when it is over: payments of it that are entered later are then listed here, with a file of their own.
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
    </section>
  );
}
