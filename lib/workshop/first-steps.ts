import { db } from '@/lib/db/client';
import type { WorkshopCard } from './card';
import { type FirstStep, firstSteps, mayLack, type StepFacts } from './rules/first-steps';

type Asking = {
  hasMailServer: boolean;
  unnamedId: string | null;
  /** somebody's unit is booked or here */
  hasOpenJobs: boolean;
};

export type ToDo = { steps: FirstStep[]; hasJobs: boolean };

/** What is to be done before the first booking. A workshop that is set up and has open jobs is not looked up at all. */
export async function readFirstSteps(workshop: WorkshopCard, asking: Asking): Promise<ToDo> {
  if (asking.hasOpenJobs && !mayLack(workshop)) return { steps: [], hasJobs: true };
  const { hasMailServer, unnamedId } = asking;
  const isBlank = workshop.updatedAt.getTime() === 0;
  const counts = await readCounts();
  const steps = firstSteps(workshop, { ...counts, isBlank, hasMailServer, unnamedId });
  return { steps, hasJobs: counts.hasJobs };
}

type Counts = Omit<StepFacts, keyof Asking | 'isBlank'>;

/** In one statement, each part of which stops at the first row or counts a small table. */
async function readCounts(): Promise<Counts> {
  const [counts] = await db.$queryRaw<Counts[]>`
    WITH listed AS (
      SELECT r."taxCategory" FROM "repair" r JOIN "model" m ON m."id" = r."modelId"
      WHERE r."isListed" AND m."isListed"
    )
    SELECT
      (SELECT COUNT(*)::int FROM "family") AS "families",
      (SELECT COUNT(*)::int FROM "model") AS "models",
      (SELECT COUNT(*)::int FROM "policy") AS "policies",
      EXISTS (SELECT 1 FROM listed) AS "hasListedRepair",
      EXISTS (SELECT 1 FROM listed WHERE "taxCategory" = 'S') AS "hasTaxedRepair",
      EXISTS (SELECT 1 FROM "job") AS "hasJobs"`;
  if (!counts) throw new Error('the counts of the catalogue came back without a row');
  return counts;
}
