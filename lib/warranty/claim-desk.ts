import { type Day, dayFromDate } from '@/lib/calendar/day';
import { db } from '@/lib/db/client';
import type { Prisma } from '@/lib/db/generated/client';
import { readStage } from '@/lib/jobs/records';
import type { AnswerClock, AnswerDue } from '@/lib/jobs/rules/answer-due';
import type { Stage } from '@/lib/jobs/rules/stages';
import { CLAIM_STANDINGS, type ClaimStanding, claimStanding } from './rules/claim-standing';
import { rulingDue } from './ruling-due';
import { readRuling, type StoredRuling } from './stored-ruling';

export const CLAIMS_PER_PAGE = 25;

export type ListedClaim = {
  number: string;
  jobNumber: string;
  stage: Stage;
  standing: ClaimStanding;
  certificate: string;
  unit: string;
  customer: string;
  symptom: string;
  openedOn: Day;
  isLate: boolean;
  ruled: StoredRuling | null;
  /** until when the customer was promised a ruling */
  answer: AnswerDue | null;
};

/** The same cut as claimStanding(), for the database. */
function whereOf(standing: ClaimStanding): Prisma.ClaimWhereInput {
  // Not at the top of the file: the database is connected on first use.
  const { reopenedAt } = db.claim.fields;
  const unruled = { state: 'open', ruling: null };
  const none = { ...unruled, OR: [{ contestedAt: null }, { contestedAt: { lte: reopenedAt } }] };
  switch (standing) {
    case 'to-rule':
      return { ...none, job: { arrivedAt: { not: null } } };
    case 'not-here':
      return { ...none, job: { arrivedAt: null } };
    case 'second-look':
      return { state: 'open', ruling: { not: null } };
    case 'contested': {
      const OR = [{ contestedAt: { not: null }, reopenedAt: null }, { contestedAt: { gt: reopenedAt } }];
      return { ...unruled, OR };
    }
    case 'ruled':
    case 'closed':
      return { state: standing };
  }
}

/** How many claims stand where. */
export async function countClaims(): Promise<Record<ClaimStanding, number>> {
  const counts = { 'to-rule': 0, 'second-look': 0, contested: 0, 'not-here': 0, ruled: 0, closed: 0 };
  for (const standing of CLAIM_STANDINGS) {
    counts[standing] = await db.claim.count({ where: whereOf(standing) });
  }
  return counts;
}

/**
 * The ruling that is due first comes first: its days are counted from the contest, otherwise from the arrival. A second look at
 * a ruling that was contested, and one that the owner took back, stand by their arrival, and so a little early.
 */
const ORDER: Record<ClaimStanding, Prisma.ClaimOrderByWithRelationInput[]> = {
  'to-rule': [{ job: { arrivedAt: 'asc' } }, { openedAt: 'asc' }, { id: 'asc' }],
  'not-here': [{ openedAt: 'asc' }, { id: 'asc' }],
  'second-look': [{ job: { arrivedAt: 'asc' } }, { openedAt: 'asc' }, { id: 'asc' }],
  contested: [{ contestedAt: 'asc' }, { id: 'asc' }],
  ruled: [{ openedAt: 'asc' }, { id: 'asc' }],
  closed: [{ closedAt: 'desc' }, { id: 'desc' }],
};

/** One page of the claims that stand at one place; pages count from 1. */
export async function listClaims(o: {
  standing: ClaimStanding;
  page: number;
  clock: AnswerClock;
  timeZone: string;
}): Promise<ListedClaim[]> {
  const rows = await db.claim.findMany({
    where: whereOf(o.standing),
    orderBy: ORDER[o.standing],
    skip: (o.page - 1) * CLAIMS_PER_PAGE,
    take: CLAIMS_PER_PAGE,
    select: {
      number: true,
      state: true,
      certificateNumber: true,
      symptom: true,
      openedOn: true,
      isLate: true,
      cause: true,
      ruling: true,
      secondLookAt: true,
      contestedAt: true,
      reopenedAt: true,
      certificate: { select: { modelName: true } },
      job: { select: { number: true, stage: true, arrivedAt: true, customer: { select: { name: true } } } },
    },
  });
  return rows.map((row) => ({
    number: row.number,
    jobNumber: row.job.number,
    stage: readStage(row.job.stage),
    standing: claimStanding(row),
    certificate: row.certificateNumber,
    unit: row.certificate.modelName,
    customer: row.job.customer.name,
    symptom: row.symptom,
    openedOn: dayFromDate(row.openedOn),
    isLate: row.isLate,
    ruled: readRuling(row),
    answer: rulingDue(row, o.clock, o.timeZone),
  }));
}
