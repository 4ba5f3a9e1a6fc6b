import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitBar, SubmitButton } from '@/app/ui/forms/submit';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { agreedRevision } from '@/lib/quotes/records';
import { inspectionFeeOf, laterNoWords } from '@/lib/quotes/rules/after-no';
import { askedWords } from '@/lib/quotes/rules/asked-words';
import { isInspectionOnly } from '@/lib/quotes/rules/inspection-fee';
import { requestMove } from '@/lib/quotes/rules/request-states';
import { type Conditions, readConditions } from '@/lib/quotes/stored-conditions';
import { readLine } from '@/lib/quotes/stored-lines';
import { takesBookings } from '@/lib/workshop/rules/missing-settings';
import { NoBookings } from '../../no-bookings';
import { decide, goOnToBook, sayYesAfterAll } from './actions';
import type { PartProps, Revision } from './part-props';

/** Yes or no, each one tap, with what follows from it and what it costs. */
export function AnswerPart({ quote, token, workshop, offer }: PartProps & { offer: Revision }) {
  const money = (minor: number) => formatMoney(minor, quote.currency, workshop.locale);
  const words = askedWords(isInspectionOnly(offer), money(offer.grossMinor));
  const until = formatDay(dayFromDate(offer.validUntil), workshop.locale, 'weekday');
  const conditions = readConditions(offer);
  const fees = {
    inspectionFee: inspectionFeeOf(offer.lines.map(readLine), offer.isGross),
    returnFee: conditions.returnFeeMinor,
  };
  const hasFee = offer.lines.some(({ kind }) => kind === 'inspection-fee');
  return (
    <section className="approval" aria-labelledby="answer">
      <h2 id="answer">{words.question}</h2>
      <Facts
        items={[
          { term: 'If you say yes', text: offer.onYes || words.onYes },
          { term: 'If you say no', text: offer.onNo || requestMove('decline').consequence },
          {
            term: 'Inspection',
            text: inspectionText({ hasFee, isAlone: isInspectionOnly(offer), ...conditions }),
          },
          {
            term: 'If we find something else',
            text: `We ask you before it costs more. ${laterNoWords(fees, money)}`,
          },
          { term: 'Answer by', text: until },
        ]}
      />
      <NoBookings workshop={workshop} />
      {takesBookings(workshop) ? (
        <ActionForm
          action={decide.bind(null, token)}
          hidden={{ revision: offer.revision, decision: 'accepted' }}
          label="Say yes"
        >
          <SubmitBar label={words.yes} consequence={words.consequence} />
        </ActionForm>
      ) : null}
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'declined' }}
        label="Say no"
      >
        <SubmitButton
          kind="second"
          label="No, thank you"
          consequence="Nothing is booked and nothing is owed. While the price is held you can still change your mind."
        />
      </ActionForm>
    </section>
  );
}

/** After a no, while the price is held: the same yes once more, with what is agreed to by it. */
export function AfterNoPart({ quote, token, workshop, declined }: PartProps & { declined: Revision }) {
  const money = formatMoney(declined.grossMinor, quote.currency, workshop.locale);
  const words = askedWords(isInspectionOnly(declined), money);
  const until = formatDay(dayFromDate(declined.validUntil), workshop.locale, 'weekday');
  return (
    <section aria-labelledby="after-no">
      <h2 id="after-no">Changed your mind?</h2>
      <p>{`You can still say yes to this price of ${money}, until the end of ${until}.`}</p>
      <NoBookings workshop={workshop} />
      {takesBookings(workshop) ? (
        <ActionForm
          action={sayYesAfterAll.bind(null, token)}
          hidden={{ revision: declined.revision }}
          label="Say yes after all"
        >
          <SubmitButton kind="second" label={words.yes} consequence={words.consequence} />
        </ActionForm>
      ) : null}
    </section>
  );
}

function inspectionText(
  o: { hasFee: boolean; isAlone: boolean } & Pick<
    Conditions,
    'inspectionFeeMinor' | 'isInspectionFeeTakenOff'
  >,
): string | null {
  if (o.isAlone && o.isInspectionFeeTakenOff)
    return 'It is the line above. It is taken off the price of the repair when the repair goes ahead.';
  if (o.hasFee) return 'The inspection is one of the lines above. Nothing comes on top of it.';
  return o.inspectionFeeMinor > 0 ? 'No inspection fee is charged on this price.' : null;
}

/** After the yes: on to the booking, with what is known filled in. */
export function BookPart({ quote, token, workshop }: PartProps) {
  const agreed = agreedRevision(quote);
  const heading = agreed && isInspectionOnly(agreed) ? 'Book the inspection' : 'Book the repair';
  return (
    <section className="approval" aria-labelledby="book">
      <h2 id="book">{heading}</h2>
      <p>
        {quote.request.serialTyped === ''
          ? 'What is wrong, your name and your address for mail are filled in. We still need the serial number, what goes in the parcel, and where to send the unit back.'
          : 'The serial, what is wrong, your name and your address for mail are filled in. We still need to know what goes in the parcel, and where to send the unit back.'}
      </p>
      <NoBookings workshop={workshop} />
      {takesBookings(workshop) ? (
        <ActionForm action={goOnToBook.bind(null, token)} label={heading}>
          <SubmitBar
            label="Go on to book"
            consequence="About three minutes. You pay nothing now, and can cancel free of charge until the unit arrives here."
          />
        </ActionForm>
      ) : null}
    </section>
  );
}
