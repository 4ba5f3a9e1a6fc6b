export type ClaimCost = {
  minutes: number;
  /** all in minor units */
  labour: number;
  parts: number;
  postage: number;
  together: number;
};

/**
 * What a claim has cost the workshop so far: minutes at the cost of an hour, rounded half up once, parts at what they were
 * bought for, and the postage back, which is known once the unit is sent. 45 minutes at 48.00 an hour are 36.00.
 * Refuses negative minutes.
 */
export function claimCost(o: {
  minutes: number;
  labourRateMinor: number;
  parts: readonly { quantity: number; unitCostMinor: number }[];
  postageMinor: number;
}): ClaimCost {
  if (o.minutes < 0) throw new RangeError(`Not a number of minutes: ${o.minutes}`);
  const labour = Math.floor((o.minutes * o.labourRateMinor + 30) / 60);
  const parts = o.parts.reduce((sum, part) => sum + part.quantity * part.unitCostMinor, 0);
  return {
    minutes: o.minutes,
    labour,
    parts,
    postage: o.postageMinor,
    together: labour + parts + o.postageMinor,
  };
}
