/** What a person found to be the cause of the fault that came back; a ruling names exactly one. */
export const CAUSES = [
  'workmanship',
  'fitted-part',
  'weakened-by-original-damage',
  'separate-fault',
  'damage-after-return',
  'no-fault-found',
] as const;
export type Cause = (typeof CAUSES)[number];

/** What was found, as its customer is told: what was seen, never who is to blame. */
export const CAUSE_TOLD: Record<Cause, string> = {
  workmanship: 'Our own work',
  'fitted-part': 'A part that we fitted',
  'weakened-by-original-damage': 'The first damage reached further than we saw',
  'separate-fault': 'A different fault, in a place that the first repair did not touch',
  'damage-after-return': 'Damage that was not there when the unit left us, as the photos show',
  'no-fault-found': 'The unit works as it should on our bench',
};

export const RULINGS = ['covered', 'partly', 'not-covered', 'returned-free'] as const;
export type Ruling = (typeof RULINGS)[number];

export type CauseRow = {
  cause: Cause;
  /** For staff and for the owner's table. */
  label: string;
  /** The ruling when the evidence is clear. */
  ruling: Exclude<Ruling, 'partly'>;
  /** Why this cause leads to this ruling, for the owner. */
  because: string;
  /** True when the ruling stands only on something a photo shows. */
  needsVisibleEvidence: boolean;
};

/** The table the owner can see: one row per cause. What follows from each is common practice of the trade, no source. */
export const CAUSE_TABLE = [
  {
    cause: 'workmanship',
    label: 'Our work',
    ruling: 'covered',
    because: 'Something we did, or did not do, made it fail again.',
    needsVisibleEvidence: false,
  },
  {
    cause: 'fitted-part',
    label: 'A part we fitted',
    ruling: 'covered',
    because: 'The part we chose and fitted failed.',
    needsVisibleEvidence: false,
  },
  {
    cause: 'weakened-by-original-damage',
    label: 'Weakened by the first damage',
    ruling: 'covered',
    because: 'The first damage reached further than we saw. Finding that was our task.',
    needsVisibleEvidence: false,
  },
  {
    cause: 'separate-fault',
    label: 'A separate fault',
    ruling: 'not-covered',
    because: 'It has nothing to do with what we repaired. It is offered as a paid job.',
    needsVisibleEvidence: true,
  },
  {
    cause: 'damage-after-return',
    label: 'Damage after we sent it back',
    ruling: 'not-covered',
    because: 'Something happened to the unit later, and a photo shows it.',
    needsVisibleEvidence: true,
  },
  {
    cause: 'no-fault-found',
    label: 'No fault found',
    ruling: 'returned-free',
    because: 'It works on our bench. Within the term it goes back without a charge.',
    needsVisibleEvidence: false,
  },
] as const satisfies readonly CauseRow[];

/** The row of one cause. Example: 'fitted-part' is covered because the part we chose and fitted failed. */
export function causeRow(cause: Cause): CauseRow {
  const row = CAUSE_TABLE.find((candidate) => candidate.cause === cause);
  if (row === undefined) throw new RangeError(`No row for the cause ${cause}`);
  return row;
}
