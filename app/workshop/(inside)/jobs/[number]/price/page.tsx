import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { CountField } from '@/app/ui/forms/count-field';
import { Select } from '@/app/ui/forms/select';
import { SubmitButton } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { linePlaces } from '@/app/workshop/(inside)/price-lines/line-places';
import { OfferLine } from '@/app/workshop/(inside)/price-lines/offer-line';
import { taxesFor } from '@/app/workshop/(inside)/price-lines/taxes';
import { dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { symptomsOfRepairs } from '@/lib/catalogue/records';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import type { JobRecord } from '@/lib/jobs/records';
import { readStage } from '@/lib/jobs/records';
import { heldPrice } from '@/lib/jobs/rules/asked-price';
import { isSomethingCovered } from '@/lib/jobs/rules/guards';
import { hasLeft } from '@/lib/jobs/rules/handover';
import { moveOf } from '@/lib/jobs/rules/stages';
import { type WalkInRepair, walkInRepairs } from '@/lib/jobs/walk-in-repairs';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { type CostOfNo, inspectionFeeOf } from '@/lib/quotes/rules/after-no';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { type QuoteLine, shownLines, splitCovered } from '@/lib/quotes/rules/lines';
import { linesKept, workedOverWords } from '@/lib/quotes/rules/tax-mode';
import { readCostOfNo } from '@/lib/quotes/stored-after-no';
import { readTakesFeeOff } from '@/lib/quotes/stored-conditions';
import { readLine } from '@/lib/quotes/stored-lines';
import { numberedTitle } from '../../../numbered-title';
import { carriedFields } from '../carried-fields';
import { FindingsList } from '../findings-part';
import { openSheet } from '../open-sheet';
import { writeChangedPrice } from './actions';

export const generateMetadata = numberedTitle('Changed price');

type Props = { params: Promise<{ number: string }> };

/** The changed price of a running job, line by line, starting from what is agreed. */
export default async function ChangedPricePage({ params }: Props) {
  const { number } = await params;
  const { job, workshop, staff } = await openSheet(number, 'money');
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = agreedOf(job);
  const isOpen = moveOf('ask-approval').from.includes(readStage(job.stage));
  const facts = factsOf(job);
  const waitsForRuling = job.kind === 'claim' && facts.ruling === null;
  const held = heldPrice({
    events: job.events,
    revisions: job.quotes[0]?.revisions ?? [],
    today: dayInZone(now(), workshop.timeZone),
  });
  const asGross = workshop.pricesIncludeTax;
  const { covered, lines, fees } = startingLines(job, asGross);
  const taxes = await taxesFor(job);
  const costOfNo = readCostOfNo(job, workshop);
  const repairs = await repairsFor(job);
  const repairNames = [...(await symptomsOfRepairs(job.model.id)).keys()];
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
        title="Changed price"
        lead={`${job.repair.name}, ${unitName(job.model)}. Agreed now: ${money(agreed?.grossMinor ?? 0)}.`}
        next="written here, then sent with “Ask for approval” on the job sheet."
      />
      {isOpen && !waitsForRuling ? (
        <section aria-labelledby="found" className="mb-8">
          <h2 id="found" className="mb-3">
            What was found
          </h2>
          {job.findings.length > 0 ? (
            <FindingsList job={job} workshop={workshop} staff={staff} />
          ) : (
            <p>Nothing is recorded yet. It has to be before the price can be sent.</p>
          )}
        </section>
      ) : null}
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
          {repairs.length > 1 && covered.length === 0 ? (
            <Select
              name="repair"
              label="The repair this price is for"
              hint="A yes puts the job under it: its check sheet proves the unit, and its certificate covers it."
              defaultValue={job.repair.id}
              choices={repairs.map((each) => ({ value: each.id, label: each.repair }))}
            />
          ) : null}
          {covered.length > 0 ? (
            <section aria-labelledby="covered-part">
              <h2 id="covered-part">The covered part</h2>
              <p>It is in every price already. Add only what the customer would pay for beside it.</p>
              <Table
                caption="The covered part"
                captionHidden
                columns={[
                  { head: 'What', kind: 'rowhead', cell: (line) => line.description },
                  { head: 'Amount', kind: 'number', cell: (line) => money(line.amount) },
                ]}
                rows={shownLines(covered)}
                rowKey={(line) => line.description}
                keep
              />
            </section>
          ) : null}
          {fees.length > 0 ? (
            <p>
              {`The inspection fee of ${money(inspectionFeeOf(fees, asGross))} with tax that was agreed to is in the price already${readTakesFeeOff(agreed, workshop) ? ', and so is the line that takes it off since the repair goes ahead' : ''}.`}
            </p>
          ) : null}
          {agreed && agreed.isGross !== asGross ? <p>{workedOverWords(asGross)}</p> : null}
          {Array.from({ length: linePlaces(lines) }, (_, index) => (
            <OfferLine
              // biome-ignore lint/suspicious/noArrayIndexKey: the lines of this form are numbered places
              key={index}
              index={index}
              line={lines[index]}
              taxes={taxes}
              workshop={workshop}
              repairNames={repairNames}
            />
          ))}
          <CountField
            name="furtherDays"
            label="Working days this takes beside those promised"
            hint="A yes moves the promise by these days, and by those it waits for the answer."
            optional
            maxLength={3}
          />
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
              costOfNo === null
                ? `Left empty: the covered part is repaired for ${money(0)} and the rest stays as it is.`
                : `Left empty: the unit goes back unrepaired for ${noCosts(costOfNo, money)}.`
            }
          />
          {held ? (
            <Checkbox
              name="customerAsked"
              label="The customer asked for this change"
              hint={`You sent them ${money(held.gross)}, which holds until ${formatDay(held.validUntil, workshop.locale, 'weekday')}. Without this, a higher price needs a finding recorded since.`}
            />
          ) : null}
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

/** The repairs of the unit's model that a price may be for; of a unit that left once, none. */
async function repairsFor(job: JobRecord): Promise<WalkInRepair[]> {
  if (hasLeft(job.events)) return [];
  return (await walkInRepairs()).filter(({ modelId }) => modelId === job.model.id);
}

type Starting = { covered: QuoteLine[]; lines: QuoteLine[]; fees: QuoteLine[] };

/**
 * What the form starts from: the agreed lines. On a claim of which something is covered that part stands apart and only
 * the paid lines can be changed; on one that is not covered the same work is offered, without the cover. An inspection
 * fee that was agreed to comes along unasked, so that it is no line of the form either. `asGross`: amounts have the tax in them.
 */
function startingLines(job: JobRecord, asGross: boolean): Starting {
  const kept = (price?: { isGross: boolean; lines: readonly Parameters<typeof readLine>[0][] }) =>
    price ? linesKept(price.lines.map(readLine), { isGross: price.isGross, asGross }) : [];
  const accepted = kept(agreedOf(job));
  const fees = accepted.filter((line) => line.kind === 'inspection-fee' && line.amount > 0);
  const agreed = splitCovered(accepted.filter((line) => line.kind !== 'inspection-fee'));
  if (job.kind !== 'claim') return { covered: [], lines: [...agreed.covered, ...agreed.paid], fees };
  if (isSomethingCovered(factsOf(job))) {
    const { covered } = splitCovered(kept(job.quotes[0]?.revisions[0]));
    return { covered, lines: agreed.paid, fees };
  }
  const uncovered = agreed.covered.filter(({ kind }) => kind !== 'cover');
  return { covered: [], lines: [...uncovered, ...agreed.paid], fees };
}

/** What goes with a no: the fees, named where there are two. */
function noCosts(cost: NonNullable<CostOfNo>, money: (minor: number) => string): string {
  const { inspectionFee, returnFee } = cost;
  if (inspectionFee === 0) return money(returnFee);
  return `${money(inspectionFee + returnFee)} (inspection ${money(inspectionFee)}, return ${money(returnFee)})`;
}
