import type { Metadata } from 'next';
import { ActionForm } from '@/app/ui/forms/action-form';
import { MoneyField } from '@/app/ui/forms/money-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { symptomsOfRepairs } from '@/lib/catalogue/records';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { isSomethingCovered } from '@/lib/jobs/rules/guards';
import { decimalText, formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { OFFERED_KINDS, type QuoteLine, shownLines, splitCovered } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { carriedFields } from '../carried-fields';
import { openSheet } from '../open-sheet';
import { OFFER_LINES } from '../schema';
import { writeChangedPrice } from './actions';

export const metadata: Metadata = { title: 'Changed price' };

const KIND_WORDS: Record<(typeof OFFERED_KINDS)[number], string> = {
  labour: 'Labour',
  part: 'Part',
  postage: 'Postage',
  'inspection-fee': 'Inspection fee',
  'return-fee': 'Return fee',
  discount: 'Discount (minus)',
  adjustment: 'Adjustment',
};

type Props = { params: Promise<{ number: string }> };

/** The changed price of a running job, line by line, starting from what is agreed. */
export default async function ChangedPricePage({ params }: Props) {
  const { number } = await params;
  const { job, workshop } = await openSheet(number, rolesThatMay('money'));
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = job.quotes[0]?.revisions.find((revision) => revision.state === 'accepted');
  const isOpen = job.stage === 'assessing' || job.stage === 'on-bench';
  const facts = factsOf(job);
  const waitsForRuling = job.kind === 'claim' && facts.ruling === null;
  const { covered, lines } = startingLines(job);
  const repairNames = [...(await symptomsOfRepairs(job.model.id)).keys()];
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
        title="Changed price"
        lead={`${job.repair.name}, ${job.model.maker} ${job.model.name}. Agreed now: ${money(agreed?.grossMinor ?? 0)}.`}
        next="written here, then sent with “Ask for approval” on the job sheet."
      />
      {isOpen && !waitsForRuling ? (
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
          {covered.length > 0 ? (
            <section aria-labelledby="covered-part">
              <h2 id="covered-part">The covered part</h2>
              <p>It is in the price by itself. Below come the lines that the customer would pay beside it.</p>
              <Table
                caption="The covered part"
                captionHidden
                columns={[
                  { key: 'what', head: 'What', kind: 'rowhead', cell: (line) => line.description },
                  { key: 'amount', head: 'Amount', kind: 'number', cell: (line) => money(line.amount) },
                ]}
                rows={shownLines(covered)}
                rowKey={(line) => line.description}
                keep
              />
            </section>
          ) : null}
          {Array.from({ length: OFFER_LINES }, (_, index) => {
            const line = lines[index];
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of this form are numbered places
              <fieldset key={index} className="offer-line">
                <legend>{`Line ${index + 1}`}</legend>
                <Select
                  name={`kind-${index}`}
                  label="Kind"
                  choices={OFFERED_KINDS.map((kind) => ({ value: kind, label: KIND_WORDS[kind] }))}
                  defaultValue={line?.kind ?? 'labour'}
                />
                <TextField
                  name={`description-${index}`}
                  label="What"
                  optional={index > 0}
                  maxLength={200}
                  list={repairNames}
                  defaultValue={line?.description}
                />
                <MoneyField
                  name={`amount-${index}`}
                  label={workshop.pricesIncludeTax ? 'Amount with tax' : 'Amount before tax'}
                  currency={workshop.currency}
                  optional={index > 0}
                  defaultValue={line ? decimalText(line.amount, workshop.currency) : undefined}
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
            hint={
              isSomethingCovered(facts)
                ? `Left empty: the covered part is repaired for ${money(0)} and the rest stays as it is.`
                : `Left empty: the unit goes back unrepaired for ${money(job.kind === 'claim' ? 0 : workshop.returnFeeMinor)}.`
            }
          />
          <SubmitButton
            label="Keep this price"
            consequence="Nothing is sent yet. An earlier one that was not answered is replaced."
          />
        </ActionForm>
      ) : (
        <Notice kind="note" heading="Not now">
          <p>
            {waitsForRuling
              ? 'The claim is ruled on first: what is covered is not offered for a price.'
              : 'A price can be changed while the job is being assessed or on the bench.'}
          </p>
        </Notice>
      )}
    </>
  );
}

/**
 * What the form starts from: the agreed lines. On a claim of which something is covered that part stands apart and only
 * the paid lines can be changed; on one that is not covered the same work is offered, without the cover.
 */
function startingLines(job: JobRecord): { covered: QuoteLine[]; lines: QuoteLine[] } {
  const revisions = job.quotes[0]?.revisions ?? [];
  const agreed = splitCovered(
    revisions.find((revision) => revision.state === 'accepted')?.lines.map(readLine) ?? [],
  );
  if (job.kind !== 'claim') return { covered: [], lines: [...agreed.covered, ...agreed.paid] };
  if (isSomethingCovered(factsOf(job))) {
    const { covered } = splitCovered(revisions[0]?.lines.map(readLine) ?? []);
    return { covered, lines: agreed.paid };
  }
  return { covered: [], lines: [...agreed.covered.filter(({ kind }) => kind !== 'cover'), ...agreed.paid] };
}
