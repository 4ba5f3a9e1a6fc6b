/** The value that so large a share of them does not exceed; sorts a copy. */
export function atShare(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}

export const median = (values: readonly number[]): number => atShare(values, 0.5);

/** One line of the table: what was measured, what came out, and what was aimed at. */
export type Figure = { what: string; value: string; aim?: string; reached?: boolean };

export function printFigures(figures: readonly Figure[]): void {
  console.log('| what | measured | aimed at | reached |');
  console.log('| --- | --- | --- | --- |');
  for (const { what, value, aim = '', reached } of figures) {
    console.log(`| ${what} | ${value} | ${aim} | ${reached === undefined ? '' : reached ? 'yes' : 'no'} |`);
  }
}
