/**
 * What had been received for an invoice before it was issued, in minor units (EN 16931 BT-113): payments until then, less
 * what earlier invoices of the same job took, less their credit notes; never below 0 nor above what is payable.
 *
 * prepaidOf({ payable: 7200, received: 2000, earlier: [] }) -> 2000
 */
export function prepaidOf(o: {
  payable: number;
  received: number;
  earlier: readonly { kind: string; payable: number }[];
}): number {
  const used = o.earlier.reduce(
    (sum, paper) => sum + (paper.kind === 'invoice' ? paper.payable : -paper.payable),
    0,
  );
  return Math.min(Math.max(0, o.received - used), o.payable);
}
