import { Facts } from '@/app/ui/docket/facts';
import { PriceTable } from '@/app/ui/page/price-table';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { formatMoney } from '@/lib/money/amount';
import { shownPrice } from '@/lib/quotes/rules/shown-price';
import { heldNoOfJob } from '@/lib/quotes/stored-held-no';
import { readLine } from '@/lib/quotes/stored-lines';
import { readYesAfterNoWords } from '@/lib/quotes/stored-offer-words';
import { sayYesAfterAll } from './actions';
import type { PartProps } from './part-props';
import { promiseIfToday } from './promise-if-today';
import { YesForm } from './yes-form';

/** After a no to a price that is still held: until the unit is packed, the same price once more, and the yes to it. */
export async function AfterNoPart({ job, token, workshop }: PartProps) {
  const today = dayInZone(now(), workshop.timeZone);
  const declined = heldNoOfJob(job, today);
  if (!declined) return null;
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const words = readYesAfterNoWords(job, declined, { workshop, today });
  const until = formatDay(dayFromDate(declined.validUntil), workshop.locale, 'weekday');
  return (
    <section aria-labelledby="after-no">
      <h2 id="after-no">Changed your mind?</h2>
      <p>
        {`You said no to ${money(declined.grossMinor)} with tax. You can still say yes to it, until the end of ${until} or until your unit is packed, whichever comes first.`}
      </p>
      <PriceTable
        caption="The price you declined"
        price={shownPrice({ ...declined, lines: declined.lines.map(readLine) }, workshop.taxName)}
        money={money}
      />
      <Facts
        items={[
          { term: 'Repair', text: declined.repair?.name },
          { term: 'If you say yes', text: words.onYes },
          { term: 'Our promise', text: await promiseIfToday(job, workshop, declined.workingDays ?? 0) },
        ]}
      />
      <YesForm
        {...{ job, workshop }}
        action={sayYesAfterAll.bind(null, token)}
        hidden={{ revision: declined.revision }}
        yes={words.yes}
        agreed={words.agreed}
        isQuiet
      />
    </section>
  );
}
