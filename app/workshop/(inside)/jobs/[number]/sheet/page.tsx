import { newFormKey } from '@/app/form-key';
import { LessonLink } from '@/app/ui/docket/lesson-link';
import { ActionForm } from '@/app/ui/forms/action-form';
import { SubmitButton } from '@/app/ui/forms/submit';
import { LinkButton } from '@/app/ui/page/button';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { limitsText, provingState } from '@/lib/bench/rules/checks';
import { provedSheets, sheetNames } from '@/lib/bench/rules/job-sheets';
import { hasMainsChecks } from '@/lib/bench/rules/mains-checks';
import { countsFrom } from '@/lib/jobs/rules/reopened';
import { showNumber } from '@/lib/numbers/job-number';
import { numberedTitle } from '../../../numbered-title';
import { CautionsPart } from '../cautions-part';
import { MovesPart } from '../moves-part';
import { openSheet } from '../open-sheet';
import { enterChecks } from './actions';
import { BesidePart } from './beside-part';
import { CheckForm } from './check-form';
import { EntryList } from './entry-list';
import { UnderPart } from './under-part';
import { EarlierEntries, NewerVersion } from './version-part';

export const generateMetadata = numberedTitle('Check sheet');

type Props = { params: Promise<{ number: string }> };

/** The check sheet at the bench: one card a check, every entry kept, pass or fail told at once. */
export default async function CheckSheetPage({ params }: Props) {
  const { number } = await params;
  const { job, workshop, staff, who } = await openSheet(number);
  const since = countsFrom(job.events);
  const sheets = provedSheets(job);
  const checks = sheets.flatMap((sheet) => sheet.checks);
  const state = provingState(checks, job.checkEntries, since);
  const isOpen = job.stage === 'proving';
  const repairOf = new Map(sheets.flatMap((sheet) => sheet.checks.map(({ id }) => [id, sheet.repair])));
  const list = (
    <ol className="check-list">
      {checks.map((check) => {
        const entries = job.checkEntries.filter((entry) => entry.checkId === check.id);
        const last = entries.at(-1);
        return (
          <li key={check.id} id={`check-${check.id}`} className="check-card">
            <h2>
              {check.label} <Standing last={last} since={since(check)} />
            </h2>
            {sheets.length > 1 ? <p>{`For: ${repairOf.get(check.id)}`}</p> : null}
            {passesText(check) === '' ? null : <p>{`Passes: ${passesText(check)}`}</p>}
            {check.help === '' ? null : <p>{check.help}</p>}
            {check.lesson ? (
              <p>
                <LessonLink claim={check.lesson} />
              </p>
            ) : null}
            <EntryList entries={entries} unit={check.unit} workshop={workshop} staff={staff} />
            {check.kind === 'connector' ? (
              <p>
                <LinkButton href={`/workshop/jobs/${job.number}/sheet/${check.id}`} kind="second">
                  {isOpen ? 'Probe the connector' : 'Look at the connector sheet'}
                  <span className="sr-only">: {check.label}</span>
                </LinkButton>
              </p>
            ) : isOpen ? (
              <CheckForm check={check} isRedo={entries.length > 0} entryId={newFormKey()} />
            ) : null}
          </li>
        );
      })}
    </ol>
  );
  return (
    <>
      <div id="sheet">
        <PageHead
          above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
          title="Check sheet"
          lead={`${sheetNames(sheets)}. ${state.passed.length} of ${checks.length} passed.`}
          next={nextWords(job.stage, state.isProved)}
        />
      </div>
      <NewerVersion job={job} role={who.role} />
      <CautionsPart job={job} />
      {job.model.isMainsPowered && !hasMainsChecks(checks) ? (
        <Notice kind="warn" heading="No electrical safety test is on this sheet">
          <p>
            This unit runs on mains. Who is trained for it tests it after the repair by the standard in force
            where you are; the checks can be added to the sheet of the repair, for the next job.
          </p>
        </Notice>
      ) : null}
      {isOpen ? (
        <ActionForm action={enterChecks.bind(null, job.number)} label="Check sheet" staysPut>
          <SubmitButton
            label="Enter everything that is filled in"
            kind="second"
            name="check"
            value="all"
            consequence="Or enter one check at a time with its own button. What is typed at the others stays."
          />
          {list}
        </ActionForm>
      ) : (
        list
      )}
      <BesidePart job={job} role={who.role} />
      <UnderPart job={job} role={who.role} />
      <EarlierEntries job={job} workshop={workshop} staff={staff} />
      <section aria-labelledby="moves-head" className="mt-8">
        <h2 id="moves-head" className="mb-3">
          What comes next
        </h2>
        <MovesPart job={job} workshop={workshop} staff={staff} who={who} isOnSheet />
      </section>
    </>
  );
}

function nextWords(stage: string, isProved: boolean): string {
  if (stage === 'on-bench') return 'start proving below. Then the readings are entered here.';
  if (stage !== 'proving') return 'readings can be entered while the job is at proving.';
  return isProved
    ? 'every check has passed. Say below that the unit is ready to go back.'
    : 'every check must pass. A failed one stays on the sheet; do it again after the work.';
}

function Standing({
  last,
  since,
}: {
  last: { isPassed: boolean; at: Date } | undefined;
  since: Date | null;
}) {
  if (!last) return null;
  if (since && last.at < since) return <Tag tone="waiting">to be done again</Tag>;
  return <Tag tone={last.isPassed ? 'good' : 'stop'}>{last.isPassed ? 'passed' : 'failed'}</Tag>;
}

// A choice's limits already say that they are what passes.
function passesText(check: Parameters<typeof limitsText>[0]): string {
  return check.kind === 'choice' ? check.passing.join(' or ') : limitsText(check);
}
