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

/**
 * The minutes and parts of a claim's job that were the workshop's own to bear: what the customer paid for beside the covered
 * part, before tax, is taken off the parts first and then off the minutes, whole ones at the cost of an hour, and never
 * leaves less than nothing. Amounts in minor units.
 * Example: 45 minutes at 48.00 an hour and parts for 1.80, paid 20.00, leave 23 minutes and no parts.
 */
export function ownPart(o: { minutes: number; parts: number; paidNet: number; labourRateMinor: number }): {
  minutes: number;
  parts: number;
} {
  const parts = Math.max(0, o.parts - o.paidNet);
  const rest = o.paidNet - (o.parts - parts);
  const paidMinutes = o.labourRateMinor > 0 ? Math.floor((rest * 60) / o.labourRateMinor) : 0;
  return { minutes: Math.max(0, o.minutes - paidMinutes), parts };
}
