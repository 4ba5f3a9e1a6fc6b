/** What one piece of a lot costs once more have come, in minor units, to the nearest: 4 in stock at 210 and 8 more at 240 give 230. */
export function meanCost(
  lot: { inStock: number; unitCostMinor: number },
  more: { quantity: number; unitCostMinor: number },
): number {
  const minor = lot.inStock * lot.unitCostMinor + more.quantity * more.unitCostMinor;
  return Math.round(minor / (lot.inStock + more.quantity));
}
