import type { Metadata } from 'next';
import { Docket } from '@/app/ui/docket/docket';
import { Facts } from '@/app/ui/docket/facts';
import { stampSteps } from '@/app/ui/docket/stamp-steps';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { dayFromDate } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { readStage, stagesReached } from '@/lib/jobs/records';
import { showNumber, showTyped } from '@/lib/numbers/job-number';
import { compareSerials } from '@/lib/numbers/serial';
import { type ClaimStanding, claimStanding } from '@/lib/warranty/rules/claim-standing';
import { symptomWords } from '@/lib/warranty/rules/standing';
import { readAnswerClock, rulingDue } from '@/lib/warranty/ruling-due';
import { AnswerTag } from '../../answer-tag';
import { STANDING_WORDS } from '../words';
import { ClaimantPart } from './claimant-part';
import { ComparePart } from './compare-part';
import { ContestPart } from './contest-part';
import { CostPart } from './cost-part';
import { InspectionPart } from './inspection-part';
import { LessonPart } from './lesson-part';
import { type CaseProps, openCase } from './open-case';
import { PromisePart } from './promise-part';
import { RenewalPart } from './renewal-part';
import { ReopenedPart } from './reopened-part';
import { RulingPart } from './ruling-part';

type Search = Record<'repair' | 'before' | 'after' | 'saved', string | string[] | undefined>;
type Props = { params: Promise<{ number: string }>; searchParams: Promise<Search> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Claim ${showTyped((await params).number)}` };
}

export default async function ClaimPage({ params, searchParams }: Props) {
  const search = await searchParams;
  const one = (value: string | string[] | undefined) => (typeof value === 'string' ? value : null);
  const props = await openCase((await params).number, one(search.repair));
  const { found, workshop } = props;
  const { claim, job, certificate } = found;
  const { locale, timeZone } = workshop;
  const standing = claimStanding({ ...claim, job });
  const due = rulingDue({ ...claim, job }, await readAnswerClock(workshop, now()), timeZone);
  const chosen = { before: one(search.before), after: one(search.after), repair: one(search.repair) };
  return (
    <>
      <PageHead
        above={
          <TextLink href="/workshop/claims" className="inline-block py-2.5">
            Claims
          </TextLink>
        }
        title={`${certificate.modelName}: ${symptomWords(claim.symptom)}`}
        lead={claim.details === '' ? undefined : `“${claim.details}”`}
        next={nextWords(standing, claim.isLate, due && formatDay(due.on, locale, 'weekday'))}
      />
      {search.saved ? (
        <Notice kind="good" role="status">
          <p>Kept.</p>
        </Notice>
      ) : null}
      <ContestPart {...props} />
      <ReopenedPart {...props} />
      <ClaimantPart {...props} />
      <Docket
        kind="Claim"
        number={showNumber(claim.number)}
        heading={`On certificate ${showNumber(certificate.number)}, revision ${certificate.revision}`}
        tag={<Tag tone={STANDING_WORDS[standing].tone}>{STANDING_WORDS[standing].label}</Tag>}
        stubFacts={[
          { term: 'Opened', text: formatDay(dayFromDate(claim.openedOn), locale, 'short') },
          { term: 'Customer', text: job.customer.name },
          ...(due ? [{ term: 'Ruling', text: <AnswerTag due={due} locale={locale} /> }] : []),
          {
            term: 'Promise',
            text: job.promisedOn ? formatDay(dayFromDate(job.promisedOn), locale, 'short') : 'none yet',
          },
        ]}
        stamps={stampSteps(
          { stage: readStage(job.stage), reached: stagesReached(job.events) },
          { locale, timeZone },
        )}
      >
        <Facts
          items={[
            { term: 'Serial certified', text: <NumberText text={certificate.serialTyped} /> },
            { term: 'Serial read', text: <SerialRead {...props} /> },
            { term: 'Certificates', text: <Revisions {...props} /> },
          ]}
        />
        <p className="mt-4">
          <LinkButton href={`/workshop/jobs/${job.number}`} kind="second">
            {`Job sheet ${showNumber(job.number)}`}
          </LinkButton>
        </p>
        <PromisePart {...props} />
      </Docket>
      <OnThisPage standing={standing} />
      <ComparePart {...props} chosen={chosen} />
      <InspectionPart {...props} />
      <RulingPart {...props} />
      <RenewalPart {...props} />
      <LessonPart {...props} />
      <CostPart {...props} />
    </>
  );
}

function nextWords(standing: ClaimStanding, isLate: boolean, dueOn: string | null): string {
  const promised = dueOn === null ? '' : ` The customer was promised an answer by ${dueOn}.`;
  switch (standing) {
    case 'not-here': {
      const asked = isLate
        ? ' It came late: whether it is let in is said with the ruling, and the customer may ask by message before that.'
        : '';
      return `the customer posts the unit.${asked} One that never comes is cancelled on the job sheet: until then nobody can open another claim on this certificate.`;
    }
    case 'to-rule':
      return `compare, inspect, and rule.${promised}`;
    case 'second-look':
      return `the owner looks at the photos and the reason, and confirms the ruling or takes it back.${promised}`;
    case 'contested':
      return `read what the customer says, look again, and rule anew.${promised}`;
    case 'ruled':
      return 'the customer has been told. Work and return go on from the job sheet.';
    case 'closed':
      return 'nothing. The claim is over.';
  }
}

/** Long pages need a short way to the part that waits. */
function OnThisPage({ standing }: { standing: ClaimStanding }) {
  const parts = [
    { href: '#compare', label: 'Side by side' },
    { href: '#inspection', label: 'Inspection' },
    { href: '#ruling', label: standing === 'second-look' ? 'Second look' : 'Ruling' },
    { href: '#cost', label: 'Cost' },
  ];
  return (
    <nav aria-label="On this page">
      <ul className="flex flex-wrap gap-x-6">
        {parts.map((part) => (
          <li key={part.href}>
            <a href={part.href} className="inline-block py-2.5">
              {part.label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}

const COMPARISON_WORDS = {
  same: { words: 'the same', tone: 'good' },
  'likely-misread': { words: 'close, not the same', tone: 'warn' },
  different: { words: 'another one', tone: 'stop' },
} as const;

function SerialRead({ found }: CaseProps) {
  const { job, certificate } = found;
  const read = job.arrivedSerial ?? job.serialTyped;
  const { words, tone } = COMPARISON_WORDS[compareSerials(certificate.serialTyped, read)];
  return (
    <>
      <NumberText text={read} /> <Tag tone={tone}>{words}</Tag>{' '}
      {job.arrivedSerial === null ? <span className="text-soft">(as typed by the customer)</span> : null}
    </>
  );
}

function Revisions({ found, workshop }: CaseProps) {
  return (
    <ul>
      {found.chain.revisions.map((revision) => (
        <li key={revision.id}>
          <TextLink href={`/workshop/certificate/${revision.id}`} file>
            {`Revision ${revision.revision} (PDF)`}
          </TextLink>
          {`, issued ${formatDay(dayFromDate(revision.issuedOn), workshop.locale, 'short')}${revision.supersededAt ? ', superseded' : ', in force'}`}
        </li>
      ))}
    </ul>
  );
}
