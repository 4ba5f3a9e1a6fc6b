import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { Checkbox } from '@/app/ui/forms/choices';
import { SubmitBar, SubmitButton } from '@/app/ui/forms/submit';
import { PriceTable } from '@/app/ui/page/price-table';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { compareDays, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { formatMoney } from '@/lib/money/amount';
import { moveReason, promiseAfterWait } from '@/lib/promise/rules/after-wait';
import type { AfterNo } from '@/lib/quotes/rules/after-no';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { comparedLines, shownPrice, sumsOf } from '@/lib/quotes/rules/shown-price';
import { linesKept } from '@/lib/quotes/rules/tax-mode';
import { startRequestWords } from '@/lib/quotes/rules/withdrawal-text';
import { readCostOfNo } from '@/lib/quotes/stored-after-no';
import { readLine } from '@/lib/quotes/stored-lines';
import { readOfferWords, readStartAfter } from '@/lib/quotes/stored-offer-words';
import { readCalendar } from '@/lib/workshop/records';
import { termsId } from '@/lib/workshop/terms-id';
import {
  ConsumerPart,
  lastDayToWithdraw,
  StartRequest,
  TermsBox,
} from '../../book/[draft]/[step]/consumer-part';
import { decide } from './actions';
import type { PartProps, Revision } from './part-props';
import { photosOf } from './photos-of';

/** The changed price: what was found, what changes line by line, and what yes and no lead to. */
export async function ApprovalPart({ job, token, workshop, offer }: PartProps & { offer: Revision }) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = agreedOf(job);
  const today = dayInZone(now(), workshop.timeZone);
  const facts = factsOf(job, today);
  const isFirst = !facts.isPriceAgreed;
  const before =
    isFirst || !agreed
      ? []
      : linesKept(agreed.lines.map(readLine), { isGross: agreed.isGross, asGross: offer.isGross });
  const lines = offer.lines.map(readLine);
  const until = formatDay(dayFromDate(offer.validUntil), workshop.locale, 'weekday');
  const costOfNo = readCostOfNo(job, workshop);
  const isRest = costOfNo === null;
  const words = readOfferWords(job, offer, { workshop, today });
  const makesContract = !facts.isContractMade;
  const withdrawBy = makesContract ? await lastDayToWithdraw(workshop) : null;
  const startAfter = makesContract ? null : readStartAfter(job, { workshop, today });
  const promise = await promiseIfToday(job, workshop, offer.workingDays ?? 0);
  return (
    <section className="approval" aria-labelledby="approval">
      <h2 id="approval">{words.heading}</h2>
      {isRest ? <p>{`The covered part is free: you pay ${money(0)} for it, whatever you answer.`}</p> : null}
      <p>{offer.reason}</p>
      {job.findings.map((finding) => (
        <p key={finding.id}>
          <strong>What we found: </strong>
          {finding.text}
        </p>
      ))}
      <PhotoStrip
        label="Photos of what we found"
        photos={photosOf(job, token, (photo) => photo.purpose === 'finding')}
      />
      <PriceTable
        caption={isFirst ? 'What it costs' : 'The agreed price and the new one'}
        price={shownPrice({ ...offer, lines }, workshop.taxName)}
        money={money}
        agreed={
          isFirst || !agreed ? undefined : { lines: comparedLines(before, lines), sums: sumsOf(agreed) }
        }
      />
      <Facts
        items={[
          {
            term: 'Repair',
            text: offer.repair && repairWords(offer.repair.name, isFirst ? null : job.repair.name),
          },
          { term: 'If you say yes', text: offer.onYes || words.onYes },
          { term: 'If you say no', text: offer.onNo || words.onNo },
          { term: 'What a no costs', text: costOfNo && feesText(costOfNo, money) },
          { term: 'Our promise', text: promise },
          { term: 'Answer by', text: until },
        ]}
      />
      {withdrawBy ? (
        // An inspection was done before this contract, so that its fee is not owed after a withdrawal from it.
        <ConsumerPart workshop={workshop} until={withdrawBy} inspectionFee={0} />
      ) : null}
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{
          revision: offer.revision,
          decision: 'accepted',
          ...(makesContract && { shownTerms: termsId(workshop.termsText) }),
        }}
        label="Say yes"
      >
        {/* Who has not booked, or came with a claim, has not agreed to them. */}
        {makesContract ? <TermsBox /> : null}
        {withdrawBy ? <StartRequest until={withdrawBy} /> : null}
        {startAfter ? (
          <Checkbox
            name="start"
            label={startRequestWords(startAfter)}
            hint="You need not tick this. Without it we start work after that day."
          />
        ) : null}
        <SubmitBar label={words.yes} consequence={words.agreed} />
      </ActionForm>
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'declined' }}
        label="Say no"
      >
        <SubmitButton label={words.no} consequence={words.declined} kind="second" />
      </ActionForm>
    </section>
  );
}

type Money = (minor: number) => string;

/** What a promise given before comes to when the answer is yes today; the wait itself is not counted in it. */
async function promiseIfToday(
  job: PartProps['job'],
  workshop: PartProps['workshop'],
  furtherDays: number,
): Promise<string | null> {
  const asked = job.events.findLast((event) => event.toStage === 'awaiting-approval');
  if (!job.promisedOn || !asked) return null;
  const endedOn = dayInZone(now(), workshop.timeZone);
  const { on } = promiseAfterWait(
    {
      promisedOn: dayFromDate(job.promisedOn),
      askedOn: dayInZone(asked.at, workshop.timeZone),
      endedOn,
      furtherDays,
    },
    await readCalendar(workshop, endedOn),
  );
  if (compareDays(on, endedOn) < 0) return null;
  const extra = furtherDays === 0 ? '' : ` ${moveReason({ waitedDays: 0, furtherDays })}`;
  return `With a yes today it is ready by ${formatDay(on, workshop.locale, 'weekday')}. The time we wait for your answer is not counted.${extra}`;
}

/** What is repaired then, and what was booked before; of a unit that came without a booking nothing was. */
function repairWords(repair: string, booked: string | null): string {
  return booked === null ? repair : `${repair}, instead of ${booked}`;
}

/** The fees of a no, one by one and together. */
function feesText({ inspectionFee, returnFee }: AfterNo, money: Money): string {
  if (inspectionFee + returnFee === 0) return `Nothing (${money(0)}): it comes back free of charge.`;
  if (inspectionFee === 0) return `Return fee ${money(returnFee)}, and nothing else.`;
  return `Inspection fee ${money(inspectionFee)}, return fee ${money(returnFee)}: ${money(inspectionFee + returnFee)} together, and nothing else.`;
}
