import { Facts } from '@/app/ui/docket/facts';
import { ActionForm } from '@/app/ui/forms/action-form';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { SubmitBar } from '@/app/ui/forms/submit';
import { Table } from '@/app/ui/page/table';
import { PhotoStrip } from '@/app/ui/photos/photo';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';
import { revisionChanges } from '@/lib/quotes/rules/lines';
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
  const returnFee = job.kind === 'claim' ? 0 : workshop.returnFeeMinor;
  const yes = `I agree to ${money(offer.grossMinor)} with tax for this repair, instead of ${money(agreed?.grossMinor ?? 0)}.`;
  return (
    <section className="approval" aria-labelledby="approval">
      <h2 id="approval">{`New price: ${money(offer.grossMinor)}`}</h2>
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
        rows={[...changes, { description: 'Together', was: agreed?.grossMinor ?? 0, now: offer.grossMinor }]}
        rowKey={(row) => row.description}
        keep
      />
      <Facts
        items={[
          {
            term: 'If you say yes',
            text: offer.onYes || 'We go on with the repair at once, at the new price.',
          },
          {
            term: 'If you say no',
            text: offer.onNo || `We send the unit back unrepaired. The return costs ${money(returnFee)}.`,
          },
          { term: 'Answer by', text: until },
        ]}
      />
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{ revision: offer.revision, decision: 'accepted', agreedText: yes }}
        label="Say yes"
      >
        <SubmitBar label={`Yes, repair it for ${money(offer.grossMinor)}`} consequence={yes} />
      </ActionForm>
      <ActionForm
        action={decide.bind(null, token)}
        hidden={{
          revision: offer.revision,
          decision: 'declined',
          agreedText: `I decline the new price and ask for the unit back unrepaired for ${money(returnFee)}.`,
        }}
        label="Say no"
      >
        <ConfirmButton
          label="No, send it back unrepaired"
          question="Send it back unrepaired?"
          confirm={`Yes, send it back for ${money(returnFee)}`}
          consequence="You can book it in again later."
        />
      </ActionForm>
    </section>
  );
}
