import type { Metadata } from 'next';
import { LessonLink } from '@/app/ui/docket/lesson-link';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { type Caution, cautionOf } from '@/lib/bench/rules/cautions';
import { limitsText, provingState } from '@/lib/bench/rules/checks';
import { formatInstant } from '@/lib/calendar/format';
import { showNumber } from '@/lib/numbers/job-number';
import { MovesPart } from '../moves-part';
import { openSheet } from '../open-sheet';
import { CheckForm } from './check-form';

export const metadata: Metadata = { title: 'Check sheet' };

type Props = { params: Promise<{ number: string }> };

/** The check sheet at the bench: one card a check, every entry kept, pass or fail told at once. */
export default async function CheckSheetPage({ params }: Props) {
  const { number } = await params;
  const { job, workshop, staff, who } = await openSheet(number);
  const state = provingState(job.sheet.checks, job.checkEntries);
  const isOpen = job.stage === 'proving';
  const cautions = [...new Set(job.sheet.checks.map((check) => check.caution))]
    .map(cautionOf)
    .filter((caution): caution is Caution => caution !== null);
  return (
    <>
      <PageHead
        above={<TextLink href={`/workshop/jobs/${job.number}`}>{`Job ${showNumber(job.number)}`}</TextLink>}
        title="Check sheet"
        lead={`${job.repair.name}, version ${job.sheet.version}. ${state.passed.length} of ${job.sheet.checks.length} passed.`}
        next={
          isOpen
            ? 'every check must pass. A failed one stays on the sheet; do it again after the work.'
            : 'readings can be entered while the job is at proving.'
        }
      />
      {cautions.map((caution) => (
        <Notice key={caution.key} kind="warn" heading={caution.title}>
          <p>{caution.text}</p>
        </Notice>
      ))}
      <ol className="check-list">
        {job.sheet.checks.map((check) => {
          const entries = job.checkEntries.filter((entry) => entry.checkId === check.id);
          const last = entries.at(-1);
          return (
            <li key={check.id} id={`check-${check.id}`} className="check-card">
              <h2>
                {check.label}{' '}
                {last ? (
                  <Tag tone={last.isPassed ? 'good' : 'stop'}>{last.isPassed ? 'passed' : 'failed'}</Tag>
                ) : null}
              </h2>
              {passesText(check) === '' ? null : <p>{`Passes: ${passesText(check)}`}</p>}
              {check.help === '' ? null : <p>{check.help}</p>}
              {check.lesson ? (
                <p>
                  <LessonLink claim={check.lesson} />
                </p>
              ) : null}
              {entries.length > 0 ? (
                <ul className="plain-list">
                  {entries.map((entry) => (
                    <li key={entry.id}>
                      {[
                        entry.reading === null
                          ? (entry.choice ?? (entry.isPassed ? 'done' : 'not done'))
                          : `${entry.reading} ${check.unit ?? ''}`,
                        entry.isPassed ? 'passed' : 'failed',
                        staff.get(entry.userId)?.initials ?? '',
                        formatInstant(entry.at, { locale: workshop.locale, zone: workshop.timeZone }),
                        entry.note,
                      ]
                        .filter((text) => text !== '')
                        .join(', ')}
                    </li>
                  ))}
                </ul>
              ) : null}
              {isOpen ? <CheckForm job={job} check={check} isRedo={entries.length > 0} /> : null}
            </li>
          );
        })}
      </ol>
      <MovesPart job={job} workshop={workshop} staff={staff} who={who} />
    </>
  );
}

// A choice's limits already say that they are what passes.
function passesText(check: Parameters<typeof limitsText>[0]): string {
  return check.kind === 'choice' ? check.passing.join(' or ') : limitsText(check);
}
