import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitBar } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { factsOf } from '@/lib/jobs/facts';
import { isSomethingCovered } from '@/lib/jobs/rules/guards';
import { formatMoney } from '@/lib/money/amount';
import { COVERED_TOGETHER, revisionChanges } from '@/lib/quotes/rules/lines';
import { readLine } from '@/lib/quotes/stored-lines';
import { decide } from './actions';
import type { PartProps, Revision } from './part-props';
import { photosOf } from './photos-of';

/** The changed price: what was found, what changes line by line, and what yes and no lead to. */
export function ApprovalPart({ job, token, workshop, offer }: PartProps & { offer: Revision }) {
  const money = (minor: number) => formatMoney(minor, workshop.currency, workshop.locale);
  const agreed = job.quotes[0]?.revisions.find((revision) => revision.state === 'accepted');
  const before = agreed?.lines.map(readLine) ?? [];
  const now = offer.lines.map(readLine);
  const changes = revisionChanges(before, now);
  const until = formatDay(dayFromDate(offer.validUntil), workshop.locale, 'weekday');
  const isRest = isSomethingCovered(factsOf(job));
  const words = isRest
    ? restWords(money, offer)
    : repairWords(money, offer, {
        before: agreed?.grossMinor ?? 0,
        returnFee: job.kind === 'claim' ? 0 : workshop.returnFeeMinor,
      });
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
      <Table
        caption="What changes, with tax"
        columns={[
          { key: 'what', head: 'What', kind: 'rowhead', cell: (row) => row.description },
          {
            key: 'was',
            head: 'Agreed',
            kind: 'number',
            cell: (row) => (row.was === null ? '–' : money(row.was)),
          },
          {
            key: 'now',
            head: 'New',
            kind: 'number',
            cell: (row) => (row.now === null ? '–' : money(row.now)),
          },
        ]}
        rows={[
          ...(isRest ? [{ description: COVERED_TOGETHER, was: 0, now: 0 }] : []),
          ...changes,
          { description: 'Together', was: agreed?.grossMinor ?? 0, now: offer.grossMinor },
        ]}
        rowKey={(row) => row.description}
        keep
      />
      <Facts
        items={[
          { term: 'If you say yes', text: offer.onYes || words.onYes },
          { term: 'If you say no', text: offer.onNo || words.onNo },
          { term: 'Answer by', text: until },
        ]}
      />
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'accepted', agreedText: words.agreed }}
        label="Say yes"
      >
        <SubmitBar label={words.yes} consequence={words.agreed} />
      </ActionForm>
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'declined', agreedText: words.declined }}
        label="Say no"
      >
        <ConfirmButton
          label={words.no}
          question={words.question}
          confirm={words.confirm}
          consequence="You can book it in again later."
        />
      </ActionForm>
    </section>
  );
}

type Money = (minor: number) => string;

/** The words of a price for a whole repair: a no sends the unit back. */
function repairWords(money: Money, offer: Revision, o: { before: number; returnFee: number }) {
  const back = money(o.returnFee);
  return {
    heading: `New price: ${money(offer.grossMinor)}`,
    onYes: 'We go on with the repair at once, at the new price.',
    onNo: `We send the unit back unrepaired. The return costs ${back}.`,
    yes: `Yes, repair it for ${money(offer.grossMinor)}`,
    agreed: `I agree to ${money(offer.grossMinor)} with tax for this repair, instead of ${money(o.before)}.`,
    no: 'No, send it back unrepaired',
    question: 'Send it back unrepaired?',
    confirm: `Yes, send it back for ${back}`,
    declined: `I decline the new price and ask for the unit back unrepaired for ${back}.`,
  };
}

/** The words of a price for what a claim does not cover: a no leaves that part as it is, and the covered one is repaired. */
function restWords(money: Money, offer: Revision) {
  return {
    heading: `Price for the rest: ${money(offer.grossMinor)}`,
    onYes: 'We repair both parts in one go.',
    onNo: `We repair the covered part for ${money(0)} and leave the rest as it is.`,
    yes: `Yes, repair the rest too for ${money(offer.grossMinor)}`,
    agreed: `I agree to ${money(offer.grossMinor)} with tax for the rest. The covered part stays free (${money(0)}).`,
    no: 'No, repair only the covered part',
    question: 'Repair only the covered part?',
    confirm: `Yes, only the covered part, for ${money(0)}`,
    declined: `I decline the price for the rest. Please repair the covered part for ${money(0)}.`,
  };
}
