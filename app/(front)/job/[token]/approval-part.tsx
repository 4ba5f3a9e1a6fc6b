import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { PriceTable } from '@/app/ui/page/price-table';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayFromDate, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { factsOf } from '@/lib/jobs/facts';
import { formatMoney } from '@/lib/money/amount';
import type { AfterNo } from '@/lib/quotes/rules/after-no';
import { agreedOf } from '@/lib/quotes/rules/agreed';
import { comparedLines, shownPrice, sumsOf } from '@/lib/quotes/rules/shown-price';
import { linesKept } from '@/lib/quotes/rules/tax-mode';
import { readCostOfNo } from '@/lib/quotes/stored-after-no';
import { readLine } from '@/lib/quotes/stored-lines';
import { readOfferWords } from '@/lib/quotes/stored-offer-words';
import { decide } from './actions';
import type { PartProps, Revision } from './part-props';
import { photosOf } from './photos-of';
import { promiseIfToday } from './promise-if-today';
import { YesForm } from './yes-form';

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
  const promise = await promiseIfToday(job, workshop, offer.workingDays ?? 0);
  return (
    <section className="approval" aria-labelledby="approval">
      <h2 id="approval">{words.heading}</h2>
      {isRest ? <p>{`The covered part is free: you pay ${money(0)} for it, whatever you answer.`}</p> : null}
      <p className="written">{offer.reason}</p>
      {job.findings.length > 0 ? (
        <>
          <h3>What we found</h3>
          <ul className="plain-list">
            {job.findings.map((finding) => (
              <li key={finding.id} className="written">
                {finding.text}
              </li>
            ))}
          </ul>
        </>
      ) : null}
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
          {
            term: 'What a no costs',
            // The usual words of a no name its cost, but not what it is made of.
            text: costOfNo && (offer.onNo || costOfNo.inspectionFee > 0) && feesText(costOfNo, money),
          },
          { term: 'Our promise', text: promise },
          { term: 'Answer by', text: until },
        ]}
      />
      <YesForm
        {...{ job, workshop }}
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'accepted' }}
        yes={words.yes}
        agreed={words.agreed}
      />
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
