import { DAY_MS } from '@/lib/calendar/spans';
import { CAUSES, type Cause, causeRow } from '@/lib/warranty/rules/causes';
import { type Chance, chanceFrom } from './chance';
import { drawOnce } from './draw-once';
import type { KnownRepair } from './known-shop';
import { type Person, somebody } from './people-names';
import { type Course, planCourse } from './plan-course';
import { type PlannedLine, planLines, renewedLines } from './plan-cover';
import { type LotBook, lotBook } from './plan-lots';

export type PlannedClaim = {
  number: string;
  /** the job whose certificate the claim stands on, by its place among the jobs */
  of: number;
  certificateNumber: string;
  state: 'open' | 'closed';
  cause: Cause | null;
  ruling: string | null;
  symptom: string;
  costMinutes: number | null;
  costPartsMinor: number | null;
  costPostageMinor: number | null;
};

export type PlannedJob = Course & {
  n: number;
  number: string;
  quoteNumber: string;
  kind: 'repair' | 'claim';
  person: Person;
  repair: KnownRepair;
  serial: string;
  userId: string;
  minutes: number;
  lotId: string | null;
  unitCostMinor: number;
  claim: PlannedClaim | null;
  certificate: { number: string; revision: number; supersededAt: number | null; lines: PlannedLine[] } | null;
};

export type JobsPlan = { jobs: PlannedJob[]; lots: LotBook };

/** One job in twenty is a claim on an earlier one. */
export const CLAIM_SHARE = 0.05;

/**
 * A history of the given length in years that ends now, with the same jobs in hand whatever its length: what differs between
 * a thousand jobs and a hundred thousand is how much lies behind. The same seed gives the same plan.
 */
export function planJobs(o: {
  jobs: number;
  seed: number;
  now: Date;
  years: number;
  repairs: readonly KnownRepair[];
  /** who works at the bench */
  hands: readonly string[];
}): JobsPlan {
  const chance = chanceFrom(o.seed);
  const draw = drawOnce(chance);
  const end = o.now.getTime();
  const lots = lotBook({ repairs: o.repairs, chance, from: end - o.years * 365 * DAY_MS, to: end });
  const jobs: PlannedJob[] = [];
  const claimable: PlannedJob[] = [];
  for (let n = 1; n <= o.jobs; n += 1) {
    const course = planCourse({ n, jobs: o.jobs, years: o.years, end, chance });
    const first =
      course.mayBeClaim && chance.happens(CLAIM_SHARE * 1.15)
        ? takeClaimable(claimable, course, chance, lots)
        : null;
    const job = first
      ? claimJob({ n, course, first, chance, draw, hands: o.hands, lots })
      : repairJob({ n, course, chance, draw, lots, ...o });
    jobs.push(job);
    if (job.kind === 'repair' && job.certificate) claimable.push(job);
  }
  return { jobs, lots };
}

type Making = {
  n: number;
  course: Course;
  chance: Chance;
  draw: (kind: 'J' | 'Q' | 'W' | 'C') => string;
  hands: readonly string[];
};

function repairJob(o: Making & { jobs: number; repairs: readonly KnownRepair[]; lots: LotBook }): PlannedJob {
  const { chance, course } = o;
  const repair = chance.pick(o.repairs);
  const lot = course.workedAt === null ? null : o.lots.take(repair, course.workedAt);
  const isSent = course.sentBackAt !== null;
  return {
    ...course,
    n: o.n,
    number: o.draw('J'),
    quoteNumber: o.draw('Q'),
    kind: 'repair',
    person: somebody(chance, o.jobs),
    repair,
    serial: `${repair.serialStem}${100_000 + chance.below(900_000)}${'ABCDEFGHJK'.charAt(chance.below(10))}`,
    userId: chance.pick(o.hands),
    minutes: Math.max(5, Math.round(repair.minutes * (0.7 + chance.below(80) / 100))),
    lotId: lot?.id ?? null,
    unitCostMinor: lot?.unitCostMinor ?? 0,
    claim: null,
    certificate:
      isSent && repair.isCovered
        ? {
            number: o.draw('W'),
            revision: 1,
            supersededAt: null,
            lines: planLines(repair, lot, course.sentBackAt ?? 0),
          }
        : null,
  };
}

function claimJob(o: Making & { first: PlannedJob; lots: LotBook }): PlannedJob {
  const { chance, course, first } = o;
  const { repair } = first;
  const isClosed = course.sentBackAt !== null;
  const cause = isClosed ? likelyCause(chance, first, o.lots) : null;
  const ruling = cause && causeRow(cause).ruling;
  const isCovered = ruling === 'covered';
  const lot =
    isCovered && cause === 'fitted-part' && course.workedAt !== null
      ? o.lots.take(repair, course.workedAt)
      : null;
  const number = first.certificate?.number ?? '';
  if (isCovered && first.certificate) first.certificate.supersededAt = course.sentBackAt;
  const minutes = Math.max(10, Math.round(repair.minutes * (0.4 + chance.below(60) / 100)));
  return {
    ...course,
    ...(isClosed && !isCovered ? { workedAt: null } : {}),
    n: o.n,
    number: o.draw('J'),
    quoteNumber: o.draw('Q'),
    kind: 'claim',
    person: first.person,
    repair,
    serial: first.serial,
    userId: chance.pick(o.hands),
    minutes,
    lotId: lot?.id ?? null,
    unitCostMinor: lot?.unitCostMinor ?? 0,
    claim: {
      number: o.draw('C'),
      of: first.n,
      certificateNumber: number,
      state: isClosed ? 'closed' : 'open',
      cause,
      ruling,
      symptom: repair.symptoms[0] ?? 'other',
      costMinutes: isClosed ? minutes : null,
      costPartsMinor: isClosed ? (lot?.unitCostMinor ?? 0) : null,
      costPostageMinor: isClosed ? 640 : null,
    },
    certificate: isCovered
      ? {
          number,
          revision: 2,
          supersededAt: null,
          lines: renewedLines(first, { from: course.bookedAt, to: course.sentBackAt ?? 0 }),
        }
      : null,
  };
}

/** Parts of a weak lot fail more often by the part; the others by chance. */
function likelyCause(chance: Chance, first: PlannedJob, lots: LotBook): Cause {
  return lots.isWeak(first.lotId) && chance.happens(0.8) ? 'fitted-part' : chance.pick(CAUSES);
}

/** A unit that left a while ago and whose cover still runs; one with a part of a weak lot before others. */
function takeClaimable(from: PlannedJob[], course: Course, chance: Chance, lots: LotBook): PlannedJob | null {
  for (let tries = 0; tries < 40 && from.length > 0; tries += 1) {
    const place = Math.max(0, from.length - 1 - chance.below(Math.min(from.length, 20_000)));
    const job = from[place];
    const sent = job?.sentBackAt ?? null;
    const end = job?.certificate?.lines[0]?.endsOn ?? '';
    if (!job || sent === null) continue;
    const isInTime =
      sent + 5 * DAY_MS < course.bookedAt && new Date(course.bookedAt).toISOString().slice(0, 10) < end;
    if (!isInTime || !(lots.isWeak(job.lotId) || chance.happens(0.35))) continue;
    const last = from.pop();
    if (last && last !== job) from[place] = last;
    return job;
  }
  return null;
}
