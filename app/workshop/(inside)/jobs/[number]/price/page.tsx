import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { decimalText, formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { LINE_KINDS } from '@/lib/quotes/rules/lines';
import { carriedFields } from '../carried-fields';
import { openSheet } from '../open-sheet';
import { OFFER_LINES } from '../schema';
import { writeChangedPrice } from './actions';

export const metadata: Metadata = { title: 'Changed price' };

const KIND_WORDS: Record<(typeof LINE_KINDS)[number], string> = {
  labour: 'Labour',
  part: 'Part',
  postage: 'Postage',
  'inspection-fee': 'Inspection fee',
  'return-fee': 'Return fee',
  discount: 'Discount (minus)',
  cover: 'Covered by the certificate (minus)',
  adjustment: 'Adjustment',
};

type Props = { params: Promise<{ number: string }> };

/** The changed price of a running job, line by line, starting from what is agreed. */
export default async function ChangedPricePage({ params }: Props) {
  const { number } = await params;
  const { job, workshop } = await openSheet(number);
  const agreed = job.quotes[0]?.revisions.find((revision) => revision.state === 'accepted');
  const isOpen = job.stage === 'assessing' || job.stage === 'on-bench';
  const returnFee = formatMoney(
    job.kind === 'claim' ? 0 : workshop.returnFeeMinor,
    workshop.currency,
    workshop.locale,
  );
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
        title="Changed price"
        lead={`${job.repair.name}, ${job.model.maker} ${job.model.name}. Agreed now: ${formatMoney(agreed?.grossMinor ?? 0, workshop.currency, workshop.locale)}.`}
        next="written here, then sent with “Ask for approval” on the job sheet."
      />
      {isOpen ? (
        <ActionForm
          action={writeChangedPrice.bind(null, job.number)}
          hidden={carriedFields(job.version)}
          label="Changed price"
        >
          <TextArea
            name="reason"
            label="Why the price changes"
            hint="In words the customer can follow. The findings and their photos are shown with it."
            rows={3}
            maxLength={1000}
          />
          {Array.from({ length: OFFER_LINES }, (_, index) => {
            const line = agreed?.lines[index];
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of this form are numbered places
              <fieldset key={index} className="offer-line">
                <legend>{`Line ${index + 1}`}</legend>
                <Select
                  name={`kind-${index}`}
                  label="Kind"
                  choices={LINE_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] }))}
                  defaultValue={line?.kind ?? 'labour'}
                />
                <TextField
                  name={`description-${index}`}
                  label="What"
                  optional={index > 0}
                  maxLength={200}
                  defaultValue={line?.description}
                />
                <MoneyField
                  name={`amount-${index}`}
                  label={workshop.pricesIncludeTax ? 'Amount with tax' : 'Amount before tax'}
                  currency={workshop.currency}
                  optional={index > 0}
                  defaultValue={line ? decimalText(line.amountMinor, workshop.currency) : undefined}
                />
              </fieldset>
            );
          })}
          <TextArea
            name="onYes"
            label="What happens on yes"
            optional
            rows={2}
            maxLength={500}
            hint="Left empty: the repair goes on at once."
          />
          <TextArea
            name="onNo"
            label="What happens on no"
            optional
            rows={2}
            maxLength={500}
            hint={`Left empty: the unit goes back unrepaired for ${returnFee}.`}
          />
          <SubmitButton
            label="Keep this price"
            consequence="Nothing is sent yet. An earlier one that was not answered is replaced."
          />
        </ActionForm>
      ) : (
        <Notice kind="note" heading="Not now">
          <p>A price can be changed while the job is being assessed or on the bench.</p>
        </Notice>
      )}
    </>
  );
}
