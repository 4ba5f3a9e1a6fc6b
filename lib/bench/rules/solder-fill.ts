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
  const percent = limitPercent(facts);
  return { isSpecified: true, percent, mm: (facts.boardMm * percent) / 100 };
}

function limitPercent({ ipcClass, leads, boardMm, isHeatPlane }: FillFacts): number {
  if (ipcClass === 2 && leads >= MANY_LEADS) return Math.min(EASED_LIMIT, (EASED_MM / boardMm) * 100);
  return ipcClass === 2 && isHeatPlane ? EASED_LIMIT : FULL_LIMIT;
}

/** The board that most units are made on; on thicker ones the limit in millimetres can be the lower one, which the help says. */
const USUAL_BOARD_MM = 1.6;

/** What may be put on a sheet ready-made. Class 1 is not among them: it leaves the fill open, so no reading could fail. */
export const SOLDER_FILLS = [
  { key: 'solder-fill-2', label: 'class 2', facts: { ipcClass: 2, leads: 1 } },
  {
    key: 'solder-fill-2-many',
    label: `class 2, ${MANY_LEADS} leads or more`,
    facts: { ipcClass: 2, leads: MANY_LEADS },
  },
  {
    key: 'solder-fill-2-plane',
    label: 'class 2, hole at a copper plane',
    facts: { ipcClass: 2, leads: 1, isHeatPlane: true },
  },
  { key: 'solder-fill-3', label: 'class 3', facts: { ipcClass: 3, leads: 1 } },
] as const satisfies readonly { key: string; label: string; facts: Omit<FillFacts, 'boardMm'> }[];

/** The check that through-hole anchors of a connector are filled, by its key; null where there is none of that key. */
export function solderFillCheck(key: string): CheckDraft | null {
  const set = SOLDER_FILLS.find((each) => each.key === key);
  if (!set) return null;
  const limit = fillLimit({ ...set.facts, boardMm: USUAL_BOARD_MM });
  if (!limit.isSpecified) return null;
  const thick =
    set.facts.leads < MANY_LEADS
      ? ''
      : ` In a board thicker than ${(EASED_MM * 100) / EASED_LIMIT} mm a fill of ${EASED_MM} mm is enough.`;
  return {
    kind: 'reading',
    label: 'Solder fill of the anchors, the least of them',
    help: `How much of the hole is filled, seen from both sides. ${limit.percent} % or more by IPC-A-610, ${set.label}.${thick}`,
    unit: '%',
    low: limit.percent,
    high: 100,
    choices: [],
    passing: [],
    lesson: null,
    caution: 'hot-air',
  };
}
