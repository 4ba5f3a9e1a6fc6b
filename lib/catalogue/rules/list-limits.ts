/** How long and how large what the catalogue keeps may be, for its forms and its list alike (common practice, no source). */
export const LIMITS = {
  name: 120,
  line: 200,
  summary: 400,
  check: 160,
  /** Answers of a choice that pass, and as many that fail. */
  answers: 10,
  entries: 20,
  entry: 200,
  weightGrams: 100_000,
  sideMm: 5000,
  minutes: 6000,
  workingDays: 250,
  place: 999,
  /** Longest sheet: past it nobody reads the lines any more. */
  checks: 60,
  pieces: 500,
  /** A signed 32-bit column; no price of a small workshop comes near it. */
  priceMinor: 2_000_000_000,
} as const;
