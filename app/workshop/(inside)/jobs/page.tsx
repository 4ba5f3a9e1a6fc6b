import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { SearchBox } from '@/app/ui/page/search-box';
import { Table } from '@/app/ui/page/table';
import { Tag } from '@/app/ui/page/tag';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { formatDay } from '@/lib/calendar/format';
import { JOBS_PER_PAGE, listJobs } from '@/lib/jobs/list-jobs';
import { soughtFrom } from '@/lib/jobs/rules/sought';
import { STAGE_WORDS, STAGES, type Stage } from '@/lib/jobs/rules/stages';
import { explainReading, showNumber } from '@/lib/numbers/job-number';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { nearSerials } from '@/lib/warranty/near-serials';
import { readWorkshop } from '@/lib/workshop/records';
import { NearList } from '../../near-list';
import { stageTone } from '../../stage-tone';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Jobs' };

type Search = { stage?: string | string[]; q?: string | string[]; page?: string | string[] };

export default async function JobsPage({ searchParams }: { searchParams: Promise<Search> }) {
  await requireStaff(rolesThatMay('take-in'));
  const search = await searchParams;
  const q = String(search.q ?? '').trim();
  const stage = STAGES.find((known) => known === search.stage) ?? null;
  const page = pageNumber(search.page);
  const [{ jobs, total, counts }, { locale, timeZone }] = await Promise.all([
    listJobs({ stage, q, page }),
    readWorkshop(),
  ]);
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const pages = Math.ceil(total / JOBS_PER_PAGE);
  const near = all === 0 && soughtFrom(q).kind === 'text' ? await nearSerials(q, { timeZone }) : null;
  return (
    <>
      <PageHead title="Jobs" lead={leadOf({ q, total, page, shown: jobs.length })} />
      <div className="mb-6 max-w-[42rem]">
        <SearchBox
          action="/workshop/jobs"
          label="Number, serial, name or e-mail"
          defaultValue={q}
          id="find-job"
          button="Search"
        />
      </div>
      <StageFilter chosen={stage} q={q} counts={counts} all={all} />
      <Table
        caption="Jobs, newest booking first"
        captionHidden
        rows={jobs}
        rowKey={(job) => job.number}
        empty={emptySentence(q)}
        columns={[
          {
            key: 'number',
            head: 'Job',
            kind: 'rowhead',
            cell: (job) => (
              <TextLink href={`/workshop/jobs/${job.number}`}>
                <NumberText text={showNumber(job.number)} />
              </TextLink>
            ),
          },
          {
            key: 'unit',
            head: 'Unit and repair',
            cell: (job) => (
              <>
                {`${job.unit}: ${job.repair}`}
                {job.kind === 'claim' ? <strong> (claim)</strong> : null}
                <span className="block text-small text-soft">
                  <NumberText text={job.serial} />
                </span>
              </>
            ),
          },
          { key: 'customer', head: 'Customer', cell: (job) => job.customer },
          {
            key: 'stage',
            head: 'Stage',
            cell: (job) => <Tag tone={stageTone(job.stage)}>{STAGE_WORDS[job.stage].label}</Tag>,
          },
          {
            key: 'promised',
            head: 'Promise',
            cell: (job) => (job.promisedOn ? formatDay(job.promisedOn, locale, 'short') : 'none yet'),
          },
          { key: 'booked', head: 'Booked', cell: (job) => formatDay(job.bookedOn, locale, 'short') },
        ]}
      />
      {near ? <NearList near={near} locale={locale} /> : null}
      <Pager page={page} pages={pages} href={(other) => addressOf({ stage, q, page: other })} />
    </>
  );
}

function leadOf(o: { q: string; total: number; page: number; shown: number }): string {
  const found = o.total === 1 ? '1 job' : `${o.total} jobs`;
  const which = o.q === '' ? '' : ` for “${o.q}”`;
  if (o.shown === o.total || o.shown === 0) return `${found}${which}.`;
  const first = (o.page - 1) * JOBS_PER_PAGE + 1;
  return `${found}${which}, here ${first} to ${first + o.shown - 1}.`;
}

function emptySentence(q: string): string {
  const sought = soughtFrom(q);
  if (sought.kind === 'nothing') return 'No job stands here.';
  if (sought.kind === 'number') return 'The number is spelt right, but nothing here carries it.';
  if (sought.wrong === 'check' || sought.wrong === 'character') return explainReading(sought.wrong);
  return 'No job fits. A part of the serial, the name or the e-mail address is enough.';
}

function addressOf(o: { stage: Stage | null; q: string; page?: number }): string {
  const search = new URLSearchParams({
    ...(o.stage === null ? {} : { stage: o.stage }),
    ...(o.q === '' ? {} : { q: o.q }),
    ...(o.page === undefined || o.page === 1 ? {} : { page: String(o.page) }),
  });
  return search.size === 0 ? '/workshop/jobs' : `/workshop/jobs?${search}`;
}

type FilterProps = { chosen: Stage | null; q: string; counts: ReadonlyMap<Stage, number>; all: number };

/** Stages nobody stands at are left out, except the one that is chosen. */
function StageFilter({ chosen, q, counts, all }: FilterProps) {
  const shown = STAGES.filter((stage) => (counts.get(stage) ?? 0) > 0 || stage === chosen);
  return (
    <nav aria-label="Jobs by stage" className="mb-6">
      <ul className="flex flex-wrap gap-x-6">
        <FilterLink href={addressOf({ stage: null, q })} words={`All (${all})`} isChosen={chosen === null} />
        {shown.map((stage) => (
          <FilterLink
            key={stage}
            href={addressOf({ stage, q })}
            words={`${STAGE_WORDS[stage].label} (${counts.get(stage) ?? 0})`}
            isChosen={stage === chosen}
          />
        ))}
      </ul>
    </nav>
  );
}

function FilterLink(props: { href: string; words: string; isChosen: boolean }) {
  return (
    <li className="py-2.5">
      {props.isChosen ? (
        <strong aria-current="page">{props.words}</strong>
      ) : (
        <TextLink href={props.href}>{props.words}</TextLink>
      )}
    </li>
  );
}
