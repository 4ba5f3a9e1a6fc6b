import type { Day } from '@/lib/calendar/day';

/** One cover line with all that figures are told by. Ids lead to lists, names are shown; money in minor units. */
export type CoverLineRow = {
  certificate: string;
  key: string;
  kind: 'work' | 'part';
  description: string;
  jobNumber: string;
  repairId: string;
  repair: string;
  modelId: string;
  model: string;
  partId: string | null;
  part: string | null;
  lotId: string | null;
  lot: string | null;
  supplier: string | null;
  technicianId: string | null;
  technician: string | null;
  policyId: string;
  policy: string;
  /** 'YYYY-MM' of dispatch */
  month: string;
  startsOn: Day;
  /** the return, the end of cover or today, whichever came first */
  observedUntil: Day;
  returnedOn: Day | null;
  daysAtRisk: number;
  claimNumber: string | null;
  cause: string | null;
  /** of all claims on the line; null without a return, or while the cost of one is not recorded */
  costMinor: number | null;
};
