import { type Day, dayFromDate, dayInZone } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { readWorkshop } from '@/lib/workshop/records';
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
  /** how many of those the search finds stand at each stage, whatever stage is chosen */
  counts: ReadonlyMap<Stage, number>;
};

/** One page of jobs, newest booking first; `q` is looked for in number, serial, name and e-mail. Pages count from 1. */
export async function listJobs(o: { stage: Stage | null; q: string; page: number }): Promise<JobPage> {
  const found = whereText(o.q);
  const where = o.stage === null ? found : { AND: [found, { stage: o.stage }] };
  const [rows, groups, { timeZone }] = await Promise.all([
    db.job.findMany({
      where,
      orderBy: [{ bookedAt: 'desc' }, { id: 'desc' }],
      skip: (o.page - 1) * JOBS_PER_PAGE,
      take: JOBS_PER_PAGE,
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
    db.job.groupBy({ by: ['stage'], where: found, _count: { _all: true } }),
    readWorkshop(),
  ]);
  const counts = new Map(groups.map((group) => [readStage(group.stage), group._count._all]));
  const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
  return {
    total: o.stage === null ? all : (counts.get(o.stage) ?? 0),
    counts,
    jobs: rows.map((row) => ({
      number: row.number,
      kind: readKind(row.kind),
      stage: readStage(row.stage),
      unit: `${row.model.maker} ${row.model.name}`,
      repair: row.repair.name,
      serial: row.serialTyped,
      customer: row.customer.name,
      bookedOn: dayInZone(row.bookedAt, timeZone),
      promisedOn: row.promisedOn ? dayFromDate(row.promisedOn) : null,
    })),
  };
}

function whereText(q: string): Prisma.JobWhereInput {
  const sought = soughtFrom(q);
  if (sought.kind === 'nothing') return {};
  if (sought.kind === 'number' && sought.of === 'J') return { number: sought.number };
  const text = q.trim();
  const key = sought.kind === 'text' ? sought.key : '';
  const insensitive = { contains: escaped(text), mode: 'insensitive' } as const;
  return {
    OR: [
      { customer: { name: insensitive } },
      { customer: { email: insensitive } },
      ...(key === '' ? [] : [{ serialKey: { contains: key } }, { number: { contains: asNumber(key) } }]),
    ],
  };
}

// Our numbers hold no O, I or L (lib/numbers/job-number.ts).
function asNumber(key: string): string {
  return key.replaceAll('O', '0').replace(/[IL]/g, '1');
}

// Prisma hands the text on as a pattern, in which these two stand for anything.
function escaped(text: string): string {
  return text.replace(/[\\%_]/g, '\\$&');
}
