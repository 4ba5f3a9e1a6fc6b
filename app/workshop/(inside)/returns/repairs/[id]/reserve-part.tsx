import { formatMoney } from '@/lib/money/amount';
import type { RepairFigure } from '@/lib/returns/repair-figures';
import { worthSentence } from '@/lib/returns/rules/repair-worth-words';
import { boundSentence, reserveSentence } from '@/lib/returns/rules/reserve-words';
import { yearSentence } from '@/lib/returns/rules/year-words';
import type { WorkshopCard } from '@/lib/workshop/card';

type ReservePartProps = { figure: RepairFigure; workshop: WorkshopCard };

/** For the owner: what its warranty costs, what to add to the price, and how far that can be trusted. */
export function ReservePart({ figure, workshop }: ReservePartProps) {
  const { terms, reserve, worth, addMinor, year } = figure;
  const shown = { currency: workshop.currency, locale: workshop.locale };
  const money = (minor: number) => formatMoney(minor, shown.currency, shown.locale);
  return (
    <section aria-labelledby="reserve">
      <h2 id="reserve">What its warranty costs</h2>
      <div className="grid max-w-[42rem] gap-3">
        {addMinor === null ? null : (
          <p>
            <strong>{`Add ${money(addMinor)} to the price.`}</strong>
            {` That is the upper cost of its warranty, without tax, rounded up. The price is ${money(terms.priceMinor)} now; where a reserve is in it already, compare with that.`}
          </p>
        )}
        {terms.termDays === null ? (
          <p>Its policy gives no term, so there is nothing to reserve for.</p>
        ) : (
          <p>{reserveSentence(reserve, terms.termDays, shown)}</p>
        )}
        <p>{worthSentence(worth, shown)}</p>
        {year.against ? <p>{yearSentence(year.against, shown)}</p> : null}
        {reserve.known ? <p className="text-small">{boundSentence(reserve.reserve, shown.locale)}</p> : null}
      </div>
    </section>
  );
}
