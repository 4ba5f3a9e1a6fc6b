import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { linePlaces } from '@/app/workshop/(inside)/price-lines/line-places';
import { OfferLine } from '@/app/workshop/(inside)/price-lines/offer-line';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { type RepairForQuote, repairsForQuote, taxRatesInUse } from '@/lib/catalogue/staff-records';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { may } from '@/lib/people/rules/roles';
import { openRevision } from '@/lib/quotes/records';
import { LEAST_VALID_DAYS } from '@/lib/quotes/rules/held-price';
import { REQUEST_WORDS, requestMove } from '@/lib/quotes/rules/request-states';
import { workedOverWords } from '@/lib/quotes/rules/tax-mode';
import type { WorkshopCard } from '@/lib/workshop/card';
import { numberedTitle } from '../../../numbered-title';
import { openQuote } from '../open-quote';
import { quotePhotos } from '../quote-photos';
import { taxChoices } from '../tax-choices';
import { writeQuote } from './actions';
import { startingPrice } from './starting-price';

export const generateMetadata = numberedTitle('Write a quote');

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ inspection?: string }> };

/** The price for a request, line by line; sent from here. */
export default async function WriteQuotePage({ params, searchParams }: Props) {
  const { number } = await params;
  const { inspection } = await searchParams;
  const { quote, workshop, who } = await openQuote(number, 'money');
  const { request } = quote;
  const above = (
    <TextLink href={`/workshop/quotes/${quote.number}`}>{`Quote ${showNumber(quote.number)}`}</TextLink>
  );
  const { from, consequence, label } = requestMove('send-quote');
  if (!from.includes(request.state)) {
    return (
      <>
        <PageHead above={above} title="Write a quote" lead={request.device} />
        <Notice kind="note" heading="Not now">
          <p>{`A price is sent before it is answered or turned down. This quote is at “${REQUEST_WORDS[request.state].label}”.`}</p>
        </Notice>
      </>
    );
  }
  const [repairs, inUse] = await Promise.all([repairsForQuote(request.modelId), taxRatesInUse()]);
  const isInspection = inspection === '1';
  const start = startingPrice(quote, { workshop, isInspection, tax: inUse[0] });
  const taxes = taxChoices(inUse, start.lines);
  const names = [...new Set(repairs.map(({ name }) => name))];
  const held = openRevision(quote);
  const known = repairs.find(({ id }) => id === request.repairId);
  return (
    <>
      <PageHead
        above={above}
        title={isInspection ? 'Offer an inspection' : held ? 'Write a new price' : 'Write a quote'}
        lead={`${request.device}: ${request.problem}`}
        next="the customer says yes or no on a private page. Work out the sum first; nothing is sent by that."
      >
        {isInspection ? (
          <TextLink href={`/workshop/quotes/${quote.number}/price`}>Offer a repair instead</TextLink>
        ) : (
          <TextLink href={`/workshop/quotes/${quote.number}/price?inspection=1`}>
            {`Offer an inspection alone${workshop.inspectionFeeMinor > 0 ? ` for ${formatMoney(workshop.inspectionFeeMinor, workshop.currency, workshop.locale)}` : ''}`}
          </TextLink>
        )}
      </PageHead>
      {held ? (
        <Notice kind="note" heading="A price is held already">
          <p>
            {`Revision ${held.revision} over ${formatMoney(held.grossMinor, quote.currency, workshop.locale)} is promised until ${formatDay(dayFromDate(held.validUntil), workshop.locale, 'weekday')}. A new one replaces it when it is not higher and held as long, or when the customer asked for the change.`}
          </p>
        </Notice>
      ) : null}
      {start.isWorkedOver ? (
        <Notice kind="note" heading="Look at the amounts">
          <p>{workedOverWords(workshop.pricesIncludeTax)}</p>
        </Notice>
      ) : null}
      <PhotoStrip label="Photos the customer sent" photos={quotePhotos(quote)} />
      <ActionForm
        action={writeQuote.bind(null, quote.number)}
        hidden={{ version: quote.version }}
        label="Quote"
      >
        <TextArea
          name="reason"
          label="What we found"
          hint="From what the customer wrote and sent, in words they can follow."
          rows={4}
          maxLength={2000}
          defaultValue={start.reason}
        />
        <TextArea
          name="proposal"
          label="What we propose"
          hint="The kind of repair, in one or two sentences."
          rows={3}
          maxLength={1000}
          defaultValue={start.proposal}
        />
        <Select
          name="repairId"
          label="Repair of the catalogue"
          hint="Its warranty and its check sheet go with the work, and its planned minutes count at the bench."
          empty="Choose a repair"
          choices={repairs.map((repair) => repairChoice(repair, workshop))}
          defaultValue={known?.id}
        />
        <NothingFits modelId={request.modelId} mayAdd={may(who.role, 'catalogue')} />
        <Checkbox
          name="takePrice"
          label="Take its price as the first line"
          hint="Before the lines below."
          defaultChecked={start.takePrice}
        />
        {Array.from({ length: linePlaces(start.lines) }, (_, index) => (
          <OfferLine
            // biome-ignore lint/suspicious/noArrayIndexKey: the lines of this form are numbered places
            key={index}
            index={index}
            line={start.lines[index]}
            workshop={workshop}
            taxes={taxes}
            repairNames={names}
            mayBeEmpty
          />
        ))}
        <CountField
          name="workingDays"
          label="Working days from the unit’s arrival"
          defaultValue={start.workingDays ?? known?.workingDays}
        />
        <CountField
          name="validDays"
          label="Days the price holds"
          hint={`${LEAST_VALID_DAYS} at least, today not counted.`}
          defaultValue={Math.max(LEAST_VALID_DAYS, workshop.approvalDays)}
        />
        <TextArea
          name="note"
          label="Anything else to know before saying yes"
          optional
          rows={2}
          maxLength={1000}
          defaultValue={start.note}
        />
        {held ? <Checkbox name="customerAsked" label="The customer asked for this change" /> : null}
        <SubmitButton
          label="Work out the sum"
          name="press"
          value="sums"
          kind="second"
          consequence="Shows what the lines come to above. Nothing is sent."
        />
        <SubmitButton label={label} name="press" value="send" consequence={consequence} />
      </ActionForm>
    </>
  );
}

function repairChoice(repair: RepairForQuote, workshop: WorkshopCard) {
  const price = formatMoney(repair.priceMinor, workshop.currency, workshop.locale);
  return {
    value: repair.id,
    label: `${repair.name}: ${price}, ${workingDaysWords(repair.workingDays)}, ${repair.policyName}`,
    group: repair.modelName,
  };
}

/** Where to add what the catalogue lacks; it need not be listed to be quoted. */
function NothingFits({ modelId, mayAdd }: { modelId: string | null; mayAdd: boolean }) {
  if (!mayAdd) {
    return (
      <p className="text-small">
        Nothing fits? The owner can add a repair to the catalogue without listing it.
      </p>
    );
  }
  return (
    <p className="text-small">
      {'Nothing fits? '}
      {modelId ? (
        <TextLink href={`/workshop/catalogue/repairs/new?model=${modelId}`}>
          Add a repair for this model
        </TextLink>
      ) : (
        <TextLink href="/workshop/catalogue/models/new">Add the model and its repair</TextLink>
      )}
      {' to the catalogue. It need not be listed.'}
    </p>
  );
}
