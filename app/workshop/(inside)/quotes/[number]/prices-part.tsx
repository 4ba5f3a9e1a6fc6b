import { Facts } from '@/app/ui/docket/facts';
import { TextLink } from '@/app/ui/page/text-link';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { coverWords } from '@/lib/catalogue/rules/cover-words';
import { formatMoney } from '@/lib/money/amount';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { RevisionLines } from '../../price-lines/revision-lines';
import type { QuotePartProps } from './open-quote';

const STATE_WORDS: Record<string, string> = {
  sent: 'waits for an answer',
  accepted: 'accepted',
  declined: 'declined',
  replaced: 'taken back or replaced',
  lapsed: 'lapsed',
};

/** Every price that was sent, the newest first, with its papers. */
export function PricesPart({ quote, workshop }: QuotePartProps) {
  const { locale, timeZone } = workshop;
  const money = (minor: number) => formatMoney(minor, quote.currency, locale);
  if (quote.revisions.length === 0) return null;
  return (
    <section id="prices" aria-labelledby="prices-head">
      <h2 id="prices-head">Prices</h2>
      {quote.revisions.toReversed().map((revision) => (
        <details key={revision.id} open={revision.state === 'accepted' || revision.state === 'sent'}>
          <summary>{`Revision ${revision.revision}: ${money(revision.grossMinor)}, ${STATE_WORDS[revision.state] ?? revision.state}`}</summary>
          <Facts
            items={[
              { term: 'What we found', text: <span className="written">{revision.reason}</span> },
              { term: 'What we propose', text: revision.proposal },
              {
                term: 'Working days',
                text: revision.workingDays === null ? null : `${revision.workingDays} from the arrival`,
              },
              { term: 'Note', text: revision.note },
            ]}
          />
          <RevisionLines revision={revision} taxName={workshop.taxName} money={money} />
          <Facts
            items={[
              {
                term: 'Cover',
                text: revision.policyVersion && coverWords(revision.policyVersion),
              },
              {
                term: 'A return unrepaired',
                text: revision.returnFeeMinor === null ? null : `${money(revision.returnFeeMinor)} at most`,
              },
              {
                term: 'Inspection fee',
                text: isInspectionOnly(revision)
                  ? revision.isInspectionFeeTakenOff
                    ? 'taken off when the repair goes ahead'
                    : 'paid beside the repair'
                  : null,
              },
              {
                term: 'Held until',
                text: formatDay(dayFromDate(revision.validUntil), locale, 'weekday'),
              },
              {
                term: 'Reminded',
                text: revision.remindedAt
                  ? formatDay(dayInZone(revision.remindedAt, timeZone), locale, 'short')
                  : null,
              },
              {
                term: 'Answered',
                text: revision.decidedAt
                  ? `${formatDay(dayInZone(revision.decidedAt, timeZone), locale, 'short')}: ${revision.agreedText ?? ''}`
                  : null,
              },
            ]}
          />
          {revision.proposal === '' ? null : (
            <p>
              <TextLink
                href={`/workshop/quotes/${quote.number}/quote.pdf?revision=${revision.revision}`}
                file
              >
                {`Quote, revision ${revision.revision} (PDF)`}
              </TextLink>
            </p>
          )}
        </details>
      ))}
      <p>
        <TextLink href={`/workshop/quotes/${quote.number}/form.pdf`} file>
          European Repair Information Form (PDF)
        </TextLink>
      </p>
    </section>
  );
}
