import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { factsOf } from '@/lib/jobs/facts';
import { readStage } from '@/lib/jobs/records';
import { EVENT_DATA } from '@/lib/jobs/rules/events';
import { mayMove } from '@/lib/jobs/rules/guards';
import { permissionOf } from '@/lib/jobs/rules/move-permissions';
import { UNRULED_STAGES } from '@/lib/jobs/rules/stage-sets';
import { actorKind, may } from '@/lib/people/rules/roles';
import { causeRow } from '@/lib/warranty/rules/causes';
import { claimStanding } from '@/lib/warranty/rules/claim-standing';
import { afterCover } from '@/lib/warranty/rules/ruling';
import { readRuling } from '@/lib/warranty/stored-ruling';
import { RULING_WORDS } from '../words';
import { LookAgainForm } from './look-again-form';
import type { CaseProps } from './open-case';
import { RulingForm } from './ruling-form';
import { SecondLookForm } from './second-look-form';

/** The ruling: the form while there is none, the second look while it waits for one, and what was ruled. */
export function RulingPart(props: CaseProps) {
  const { claim } = props.found;
  const standing = claimStanding({ ...claim, job: props.found.job });
  const reason = reasonOf(props.found.job.events);
  const isToRule = standing === 'not-here' || standing === 'to-rule' || standing === 'contested';
  return (
    <section id="ruling" aria-labelledby="ruling-head">
      <h2 id="ruling-head">Ruling</h2>
      {claim.isLate && standing !== 'closed' ? (
        <Notice kind="note" heading="Opened after cover had ended">
          <p>A person decides: the form below asks whether it is let in.</p>
          {reason ? <p>{`Why the owner opened it: ${reason}`}</p> : null}
        </Notice>
      ) : null}
      <Ruled {...props} />
      {standing === 'second-look' ? <SecondLook {...props} /> : null}
      {standing === 'ruled' ? <ToldHint {...props} /> : null}
      {standing === 'ruled' ? <LookAgainForm {...props} /> : null}
      {isToRule ? <ToRule {...props} /> : null}
      {claim.ruling === null && standing === 'closed' ? <p>Closed without a ruling.</p> : null}
    </section>
  );
}

/** Where a contest that was told is written down, as long as there may be one. */
function ToldHint({ found: { job }, who }: CaseProps) {
  const isOpen = mayMove('contest', factsOf(job), actorKind(who.role)).allowed;
  if (!isOpen || !may(who.role, permissionOf('contest'))) return null;
  return (
    <p>
      Have they told you that they see it another way?{' '}
      <TextLink href={`/workshop/jobs/${job.number}#moves`}>Write it down on the job sheet</TextLink>.
    </p>
  );
}

function reasonOf(events: CaseProps['found']['job']['events']): string | undefined {
  const opened = events.find(({ kind }) => kind === 'claim-opened');
  return opened && EVENT_DATA['claim-opened'].parse(opened.data).reason;
}

function ToRule(props: CaseProps) {
  const { job } = props.found;
  if (!UNRULED_STAGES.includes(readStage(job.stage))) {
    return <p>The unit is not here yet. It is inspected and ruled on once it is taken in.</p>;
  }
  if (!job.isSerialSettled) {
    return (
      <p>
        The serial read is not the certificate’s, and nobody has settled yet which unit this is.{' '}
        <TextLink href={`/workshop/jobs/${job.number}`}>Settle it on the job sheet</TextLink>, then rule.
      </p>
    );
  }
  if (!may(props.who.role, 'rule-claim')) return <p>Ruling is for the bench and the owner.</p>;
  return <RulingForm {...props} />;
}

function SecondLook(props: CaseProps) {
  if (may(props.who.role, 'second-look')) return <SecondLookForm {...props} />;
  return (
    <Notice kind="note" heading="Waits for the owner">
      <p>
        A ruling other than covered is told to the customer only after the owner has looked a second time.
      </p>
    </Notice>
  );
}

function Ruled({ found, workshop, names }: CaseProps) {
  const { claim } = found;
  const ruled = readRuling(claim);
  if (!ruled) return null;
  const row = causeRow(ruled.cause);
  const name = (id: string | null) => (id ? (names.get(id)?.name ?? 'somebody who left') : null);
  const at = (instant: Date | null) =>
    instant ? formatInstant(instant, { locale: workshop.locale, zone: workshop.timeZone }) : null;
  const isAfter = afterCover({ ...ruled, isLetIn: claim.isLetIn }) !== null;
  const isByDoubt = ruled.ruling === 'covered' && row.ruling !== 'covered';
  return (
    <Facts
      items={[
        {
          term: 'Ruling',
          text: (
            <strong>{`${RULING_WORDS[ruled.ruling]}${ruled.isFinal ? '' : ' (not told to the customer yet)'}`}</strong>
          ),
        },
        { term: 'Cause', text: isAfter ? row.label : `${row.label}. ${row.because}` },
        { term: 'Let in', text: letInWords(claim.isLetIn) },
        {
          term: 'Why covered',
          text: isByDoubt
            ? 'The evidence is unclear, or no photo shows it: an unusual failure is not by itself the customer’s fault.'
            : null,
        },
        { term: 'Also found', text: alsoFoundWords(claim.alsoFound) },
        { term: 'For the customer', text: <span className="written">{claim.reasonText ?? ''}</span> },
        { term: 'Ruled by', text: joined(name(claim.ruledBy), at(claim.ruledAt)) },
        { term: 'Second look', text: joined(name(claim.secondLookBy), at(claim.secondLookAt)) },
      ]}
    />
  );
}

function joined(who: string | null, when: string | null): string | null {
  return who && when ? `${who}, ${when}` : null;
}

function letInWords(isLetIn: boolean | null): string | null {
  if (isLetIn === null) return null;
  return isLetIn
    ? 'Yes: ruled on as if cover still ran.'
    : 'No: it came after cover had ended, so it is not covered, whatever the cause.';
}

function alsoFoundWords(stored: string | null): string | null {
  if (stored === 'separate-fault' || stored === 'damage-after-return') return causeRow(stored).label;
  return null;
}
