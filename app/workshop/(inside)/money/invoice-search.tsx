import type { InvoiceState } from '@/lib/invoices/rules/state';

/** Seeks by number, job or name within the chosen state; works without script. */
export function InvoiceSearch({ text, state }: { text: string; state: InvoiceState | null }) {
  return (
    <search>
      <form action="/workshop/money" method="get" className="search">
        <label htmlFor="search-q" className="field-label">
          Find an invoice by its number, its job or the customer’s name
        </label>
        {state ? <input type="hidden" name="state" value={state} /> : null}
        <span className="field-line">
          <input
            id="search-q"
            name="q"
            type="search"
            className="field-box"
            defaultValue={text}
            autoComplete="off"
            spellCheck={false}
          />
          <button type="submit" className="button button-second">
            Find
          </button>
        </span>
      </form>
    </search>
  );
}
