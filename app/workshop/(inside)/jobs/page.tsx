import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { NumberText } from '@/app/ui/words/number-text';
import { StageTag } from '@/app/ui/words/stage-tag';
import { NumberLink } from '@/app/workshop/number-link';
import { formatDay } from '@/lib/calendar/format';
import { JOBS_PER_PAGE, listJobs } from '@/lib/jobs/list-jobs';
import { soughtFrom } from '@/lib/jobs/rules/sought';
import { STAGE_WORDS, STAGES } from '@/lib/jobs/rules/stages';
import { nearSerials } from '@/lib/warranty/near-serials';
import { NearList } from '../../near-list';
import { type ListSearch, listedAt } from '../../searched-list/list-address';
import { emptySentence, leadOf } from '../../searched-list/list-words';
import { PartLinks } from '../../searched-list/part-links';
import { SearchedList } from '../../searched-list/searched-list';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Jobs' };

export default async function JobsPage({ searchParams }: { searchParams: ListSearch }) {
  await requireStaff('take-in');
  const asked = (await searchParams)['stage'];
  const stage = STAGES.find((known) => known === asked) ?? null;
  const sought = { ...(await listedAt('/workshop/jobs', searchParams)), part: ['stage', stage] as const };
  const { q } = sought;
  const [{ jobs, total, page, counts }, { locale, timeZone }] = await Promise.all([
    listJobs({ stage, q, page: sought.page }),
    readWorkshop(),
  ]);
  const listed = { ...sought, page };
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const near = all === 0 && soughtFrom(q).kind === 'text' ? await nearSerials(q, { timeZone }) : null;
  // Stages nobody stands at are left out, except the one that is chosen.
  const shown = STAGES.filter((known) => (counts.get(known) ?? 0) > 0 || known === stage);
  return (
    <SearchedList
      title="Jobs"
      lead={leadOf({ listed, found: total === 1 ? '1 job' : `${total} jobs`, total, perPage: JOBS_PER_PAGE })}
      listed={listed}
      search={{ id: 'find-job', label: 'Number, serial, name, telephone, town or parcel’s reference' }}
      total={total}
      perPage={JOBS_PER_PAGE}
      filter={
        <PartLinks
          label="Jobs by stage"
          listed={listed}
          name="stage"
          chosen={stage}
          all={all}
          parts={shown.map((value) => ({
            value,
            words: STAGE_WORDS[value].label,
            count: counts.get(value) ?? 0,
          }))}
        />
      }
      instead={near ? <NearList near={near} locale={locale} /> : null}
      table={{
        caption: 'Jobs, newest booking first',
        rows: jobs,
        rowKey: (job) => job.number,
        empty: emptySentence(q, EMPTY),
        columns: [
          { head: 'Job', kind: 'rowhead', cell: (job) => <NumberLink of="jobs" number={job.number} /> },
          {
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
          { head: 'Customer', cell: (job) => job.customer },
          { head: 'Stage', cell: (job) => <StageTag stage={job.stage} /> },
          {
            head: 'Promise',
            cell: (job) => (job.promisedOn ? formatDay(job.promisedOn, locale, 'short') : 'none yet'),
          },
          { head: 'Booked', cell: (job) => formatDay(job.bookedOn, locale, 'short') },
        ],
      }}
    />
  );
}

const EMPTY = {
  nothing: 'No job stands here.',
  number: 'The number is spelt right, but nothing here carries it.',
  text: 'No job fits. A part of the serial, the name, the e-mail address or the town is enough, and the last six digits of a telephone number.',
};
