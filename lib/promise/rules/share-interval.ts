/** Two-sided 95 % of the normal distribution. */
const Z = 1.959963984540054;

/**
 * The Wilson 95 % interval of a share, 0 to 1: where the true share may well lie, when so many of so many were counted
 * (Wilson 1927; Newcombe, Statistics in Medicine 1998;17:857). Null where nothing was counted; refuses broken counts.
 *
 * shareInterval(18, 20) -> { low: 0.699, high: 0.972 }
 */
export function shareInterval(kept: number, of: number): { low: number; high: number } | null {
  if (!Number.isInteger(kept) || !Number.isInteger(of) || kept < 0 || kept > of)
    throw new RangeError(`Not a share: ${kept} of ${of}`);
  if (of === 0) return null;
  const share = kept / of;
  const square = Z * Z;
  const middle = (share + square / (2 * of)) / (1 + square / of);
  const half = (Z * Math.sqrt((share * (1 - share)) / of + square / (4 * of * of))) / (1 + square / of);
  return { low: Math.max(0, middle - half), high: Math.min(1, middle + half) };
}
