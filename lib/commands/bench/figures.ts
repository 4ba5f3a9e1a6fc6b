/** The value that so large a share of them does not exceed; sorts a copy. */
export function atShare(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}

export const median = (values: readonly number[]): number => atShare(values, 0.5);

/** The median of the ratios taken pair by pair, so that the load of a moment falls on both sides of each. */
export function medianRatio(above: readonly number[], below: readonly number[]): number {
  return median(above.map((value, place) => value / (below[place] ?? Number.NaN)));
}

/**
 * What was measured, what came out, and what was aimed at; without an aim it is only told. A fault is one on any machine,
 * however busy: a part that broke, or more statements than are aimed at.
 */
export type Figure = { what: string; value: string; aim?: string; reached?: boolean; isFault?: boolean };

/** The most that is aimed at: growth of p95 from few jobs to many, its milliseconds at many, statements of a page. */
export type Most = { growth?: number; ms?: number; statements?: number };

type Timed = { few: readonly number[]; many: readonly number[]; statements?: number | undefined };

/** p50 and p95 of the same asked of few jobs and of many, in turn, beside what is aimed at. */
export function growthFigure(what: string, { few, many, statements }: Timed, most: Most = {}): Figure {
  const p95 = atShare(many, 0.95);
  const grew = p95 / atShare(few, 0.95);
  const aims: [string, boolean][] = [];
  if (most.growth !== undefined) aims.push([`p95 at most ${most.growth} x`, grew <= most.growth]);
  if (most.ms !== undefined) aims.push([`p95 under ${most.ms} ms`, p95 < most.ms]);
  const isFault = (statements ?? 0) > (most.statements ?? Number.POSITIVE_INFINITY);
  if (most.statements !== undefined) aims.push([`at most ${most.statements} statements`, !isFault]);
  const ms = (values: readonly number[]) => `${toMs(median(values))} / ${toMs(atShare(values, 0.95))}`;
  const ratios = `p50 ${(median(many) / median(few)).toFixed(2)} x, p95 ${grew.toFixed(2)} x`;
  const sent = statements === undefined ? '' : `; ${statements} sent`;
  return {
    what,
    value: `${ms(few)} to ${ms(many)} ms, ${ratios}${sent}`,
    ...(aims.length > 0 && {
      aim: aims.map(([aim]) => aim).join(', '),
      reached: aims.every(([, reached]) => reached),
      isFault,
    }),
  };
}

const toMs = (ms: number) => ms.toFixed(ms < 10 ? 1 : 0);

export type Column = { head: string; figures: readonly Figure[] };

/** One table: a row for whatever was measured, a column for each database. */
export function printTable(columns: readonly Column[]): void {
  const row = (cells: readonly string[]) => console.log(`| ${cells.join(' | ')} |`);
  row(['what', 'aimed at', ...columns.map(({ head }) => head)]);
  row(['---', '---', ...columns.map(() => '---')]);
  for (const what of new Set(columns.flatMap(({ figures }) => figures.map((figure) => figure.what)))) {
    const found = columns.map(({ figures }) => figures.find((figure) => figure.what === what));
    const aim = found.find((figure) => figure?.aim)?.aim ?? '';
    row([what, aim, ...found.map((figure) => (figure ? cellOf(figure) : ''))]);
  }
}

function cellOf({ value, reached }: Figure): string {
  if (reached === undefined) return value;
  return `${value}: ${reached ? 'reached' : '**not reached**'}`;
}
