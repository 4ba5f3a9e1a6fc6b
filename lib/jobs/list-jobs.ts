import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { unitName } from '@/lib/catalogue/rules/unit-name';
import { db } from '@/lib/db/client';
import { pageOf } from '@/lib/numbers/page-of';
import { readWorkshop } from '@/lib/workshop/records';
import { findByText } from './find-by-text';
import { readKind, readStage } from './records';
import { soughtFrom } from './rules/sought';
import type { JobKind, Stage } from './rules/stages';

export const JOBS_PER_PAGE = 25;

export type ListedJob = {
  number: string;
  kind: JobKind;
  stage: Stage;
  unit: string;
  repair: string;
  serial: string;
  customer: string;
  bookedOn: Day;
  promisedOn: Day | null;
};

export type JobPage = {
  jobs: ListedJob[];
  total: number;
  /** the one that is shown */
  page: number;
  /** how many of those the search finds stand at each stage, whatever stage is chosen */
  counts: ReadonlyMap<Stage, number>;
};

/**
 * One page of jobs, newest booking first; `q` is looked for as `stored-sought.ts` says. Pages count from 1, and what is past the
 * last page is the last.
 */
export async function listJobs(o: { stage: Stage | null; q: string; page: number }): Promise<JobPage> {
  const size = JOBS_PER_PAGE;
  const found = soughtFrom(o.q).kind === 'nothing' ? null : await findByText({ ...o, size });
  const groups = found ? found.counts : await countByStage();
  const counts = new Map(groups.map((group) => [readStage(group.stage), group.count]));
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  const total = o.stage === null ? all : (counts.get(o.stage) ?? 0);
  const { page, skip } = pageOf(total, { page: o.page, size });
  const [rows, { timeZone }] = await Promise.all([
    db.job.findMany({
      where: { ...(found ? { id: { in: found.ids } } : o.stage !== null && { stage: o.stage }) },
      orderBy: [{ bookedAt: 'desc' }, { id: 'desc' }],
      skip: found ? 0 : skip,
      take: size,
      select: {
        number: true,
        kind: true,
        stage: true,
        serialTyped: true,
        bookedAt: true,
        promisedOn: true,
        model: { select: { maker: true, name: true } },
        repair: { select: { name: true } },
        customer: { select: { name: true } },
      },
    }),
    readWorkshop(),
  ]);
  return {
    total,
    page,
    counts,
    jobs: rows.map((row) => ({
      number: row.number,
      kind: readKind(row.kind),
      stage: readStage(row.stage),
      unit: unitName(row.model),
      repair: row.repair.name,
      serial: row.serialTyped,
      customer: row.customer.name,
      bookedOn: dayInZone(row.bookedAt, timeZone),
      promisedOn: row.promisedOn ? dayFromDate(row.promisedOn) : null,
    })),
  };
}

async function countByStage(): Promise<{ stage: string; count: number }[]> {
  const groups = await db.job.groupBy({ by: ['stage'], _count: { _all: true } });
  return groups.map(({ stage, _count }) => ({ stage, count: _count._all }));
}
