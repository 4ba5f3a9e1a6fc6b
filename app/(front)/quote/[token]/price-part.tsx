import { Facts } from '@/app/ui/docket/facts';
import { LinkButton } from '@/app/ui/page/button';
import { PriceTable } from '@/app/ui/page/price-table';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import { formatMoney } from '@/lib/money/amount';
import { coverBeside } from '@/lib/quotes/rules/asked-words';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { shownPrice } from '@/lib/quotes/rules/shown-price';
import { readLine } from '@/lib/quotes/stored-lines';
import { ChangesPart } from './changes-part';
import type { PartProps, Revision } from './part-props';

type Props = PartProps & { revision: Revision; heading: string };

/** One revision of the price: what was found, what is proposed, each line, the total, and how long it holds. */
export function PricePart(props: Props) {
  const { quote, token, workshop, revision, heading } = props;
  const money = (minor: number) => formatMoney(minor, quote.currency, workshop.locale);
  const day = (date: Date) => formatDay(dayFromDate(date), workshop.locale, 'weekday');
  const { workingDays, decidedAt, policyVersion: terms } = revision;
  return (
    <section aria-labelledby="price">
      <h2 id="price">{heading}</h2>
      <Facts
        items={[
          { term: 'What we found', text: written(revision.reason) },
          { term: 'What we would do', text: written(revision.proposal) },
          { term: 'To know before you decide', text: written(revision.note) },
        ]}
      />
      <PriceTable
        caption={`Revision ${revision.revision}`}
        price={shownPrice({ ...revision, lines: revision.lines.map(readLine) }, workshop.taxName)}
        money={money}
      />
      <ChangesPart {...props} />
      <Facts
        items={[
          {
            term: revision.state === 'sent' ? 'Holds until the end of' : 'Held until the end of',
            text: day(revision.validUntil),
          },
          {
            term: 'Usual time',
            text:
              workingDays === null ? null : `${workingDaysWords(workingDays)} from the day your unit is here`,
          },
          { term: 'Cover', text: terms ? coverBeside(coverWords(terms), isInspectionOnly(revision)) : null },
          {
            term: 'Your answer',
            text: decidedAt
              ? `On ${formatDay(dayInZone(decidedAt, workshop.timeZone), workshop.locale, 'weekday')}: ${revision.agreedText ?? ''}`
              : null,
          },
        ]}
      />
      <p className="page-actions">
        <LinkButton href={`/quote/${token}/quote.pdf`} kind="quiet" file>
          This quote (PDF)
        </LinkButton>
        <LinkButton href={`/quote/${token}/form`} kind="quiet">
          European Repair Information Form
        </LinkButton>
      </p>
    </section>
  );
}

function written(text: string) {
  return text === '' ? null : <span className="written">{text}</span>;
}
