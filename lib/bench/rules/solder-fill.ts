import type { CheckDraft } from './check-problems';

export type IpcClass = 1 | 2 | 3;

export type FillFacts = {
  ipcClass: IpcClass;
  /** Leads of the part; 14 and more count as many in class 2. */
  leads: number;
  /** Thickness of the board in millimetres. */
  boardMm: number;
  /** The hole ties to a copper plane that draws the heat away, and solder wets all round on the source side. */
  isHeatPlane?: boolean;
};

export type FillLimit = { isSpecified: false } | { isSpecified: true; percent: number; mm: number };

// IPC-A-610 Table 7-4 and J-STD-001, plated-through hole with a lead. Newer revisions print 1.19 mm (from memory).
const MANY_LEADS = 14;
const FULL_LIMIT = 75;
const EASED_LIMIT = 50;
const EASED_MM = 1.2;

/**
 * How far solder must fill a plated-through hole, as percent of the board and in millimetres; class 1 leaves it open.
 * 75 % in class 2 and 3; in class 2 with 14 leads or more 50 % or 1.2 mm, whichever is less; in class 2 at a heat-sinking plane 50 %.
 * Refuses a board that has no thickness and a part without leads.
 * Example: 20 leads, class 2, 3.2 mm board gives { percent: 37.5, mm: 1.2 }.
 */
export function fillLimit(facts: FillFacts): FillLimit {
  if (!(facts.boardMm > 0)) throw new RangeError(`Not a board: ${facts.boardMm} mm`);
  if (!Number.isInteger(facts.leads) || facts.leads < 1)
    throw new RangeError(`Not a count of leads: ${facts.leads}`);
  if (facts.ipcClass === 1) return { isSpecified: false };
  const mm = limitMm(facts);
  return { isSpecified: true, mm, percent: (mm / facts.boardMm) * 100 };
}

function limitMm({ ipcClass, leads, boardMm, isHeatPlane }: FillFacts): number {
  const share = (percent: number) => (boardMm * percent) / 100;
  if (ipcClass === 2 && leads >= MANY_LEADS) return Math.min(share(EASED_LIMIT), EASED_MM);
  return share(ipcClass === 2 && isHeatPlane ? EASED_LIMIT : FULL_LIMIT);
}

/** Whether a fill that was seen, in percent of the board, is enough; always so in class 1, which specifies none. */
export function isFillEnough(seenPercent: number, facts: FillFacts): boolean {
  const limit = fillLimit(facts);
  return !limit.isSpecified || seenPercent >= limit.percent;
}

/** The check that through-hole anchors of a connector are filled, as it is offered on a sheet: the limit of class 2 and 3. */
export function solderFillCheck(): CheckDraft {
  return {
    kind: 'reading',
    label: 'Solder fill of the anchors, the least of them',
    help: `How much of the hole is filled, seen from both sides. ${FULL_LIMIT} % by IPC-A-610 class 2 and 3; class 2 eases to ${EASED_LIMIT} % with ${MANY_LEADS} leads or more, or at a copper plane.`,
    unit: '%',
    low: FULL_LIMIT,
    high: 100,
    choices: [],
    passing: [],
    lesson: null,
    caution: 'hot-air',
  };
}
