import type { Stage } from '@/lib/jobs/rules/stages';
import { type RiskCount, survivalCurve } from '@/lib/statistics/survival';

/** Of the stays in a stage that have lasted so many days: how many ended then, and how many go on. */
export type StayCount = { stage: string; days: number; ended: number; stillHere: number };

export type WaitsOn = 'customer' | 'parts' | 'us';

/** Stages in which a unit waits, in the order it passes them. What is sent back waits no more. */
export const WAITING_STAGES = [
  'booked',
  'arrived',
  'assessing',
  'awaiting-approval',
  'awaiting-parts',
  'on-bench',
  'proving',
  'ready',
] as const satisfies readonly Stage[];

export type WaitingStage = (typeof WAITING_STAGES)[number];

/** Days by which a share of stays has ended, with their 95 % interval; `high` is null where the end is not in sight. */
export type DaysBy = { days: number; low: number; high: number | null };

export type StageDays = {
  stage: WaitingStage;
  waitsOn: WaitsOn;
  stays: number;
  stillHere: number;
  /** null where fewer than so many have ended */
  half: DaysBy | null;
  mostly: DaysBy | null;
};

/** The share called "most": four of five. */
export const MOSTLY = 0.8;

/**
 * How long units stay in each stage: the days by which half, and four of five, of all stays had ended. Stays that go on count for
 * as long as they have lasted (Kaplan and Meier 1958), so that a slow unit weighs before it is done; the interval is where the
 * curve's own interval crosses the share (Brookmeyer and Crowley 1982). Days may be broken. Stages nobody stayed in are left out;
 * refuses counts below nought.
 *
 * Stays of 1, 2 and 3 days that ended, and one of 9 that goes on: half by day 2, four of five not known yet.
 */
export function stageDays(counts: readonly StayCount[]): StageDays[] {
  return WAITING_STAGES.flatMap((stage) => {
    const own = counts.filter((count) => count.stage === stage);
    const stillHere = own.reduce((sum, count) => sum + count.stillHere, 0);
    const stays = own.reduce((sum, count) => sum + count.ended, stillHere);
    if (stays === 0) return [];
    const curve = own.map(({ days, ended, stillHere: left }): RiskCount => ({ days, returned: ended, left }));
    return [
      {
        stage,
        waitsOn: WAITS_ON[stage],
        stays,
        stillHere,
        half: daysBy(curve, 0.5),
        mostly: daysBy(curve, MOSTLY),
      },
    ];
  });
}

const WAITS_ON: Record<WaitingStage, WaitsOn> = {
  booked: 'customer',
  arrived: 'us',
  assessing: 'us',
  'awaiting-approval': 'customer',
  'awaiting-parts': 'parts',
  'on-bench': 'us',
  proving: 'us',
  ready: 'us',
};

function daysBy(counts: readonly RiskCount[], share: number): DaysBy | null {
  const left = 1 - share + 1e-9;
  const steps = survivalCurve(counts);
  const days = steps.find((step) => step.well <= left)?.days;
  if (days === undefined) return null;
  // The last stay of all ends the curve without an interval of its own; what it leaves open stays open.
  const inside = steps.filter((step) => step.well > 0);
  return {
    days,
    low: inside.find((step) => step.low <= left)?.days ?? days,
    high: inside.find((step) => step.high <= left)?.days ?? null,
  };
}
