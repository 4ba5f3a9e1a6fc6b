import type { Route } from 'next';
import type { ReactNode } from 'react';
import { intervalWords, percentWords } from '@/lib/returns/rules/share-words';
import type { Counted } from '@/lib/statistics/fisher';
import { shareInterval } from '@/lib/statistics/share-interval';
import { Table } from '../page/table';
import { TextLink } from '../page/text-link';
import { FootMarks } from './axes';
import { cut, shareScale, WIDE } from './ticks';

export type IntervalRow = {
  key: string;
  label: string;
  href?: Route | undefined;
  count: Counted;
  /** a word that sets the row apart, such as 'strong evidence'; its dot is drawn as a square */
  mark?: string | undefined;
};

type IntervalPlotProps = {
  caption: string;
  /** what a row is: 'Lot', 'Repair' */
  head: string;
  rows: readonly IntervalRow[];
  /** all rows together: drawn as a dashed line */
  centre: Counted | null;
  locale: string;
  /** what the table says where there are no rows */
  empty?: ReactNode;
};

const STEP = 48;
const TOP = 6;
const LEFT = 12;
const RIGHT = WIDE - 24;

/**
 * The share returned of each of a few things, as a dot with its 95 % interval, and the same in a table. In the order given,
 * which should be that of names or dates and not of shares: nothing is ranked.
 *
 * ```tsx
 * <IntervalPlot caption="Returned by lot" head="Lot" centre={{ returned: 12, units: 340 }} locale="en-GB"
 *   rows={[{ key: 'a', label: 'Lot 0419', count: { returned: 6, units: 12 }, mark: 'strong evidence' }]} />
 * ```
 */
export function IntervalPlot(props: IntervalPlotProps) {
  const { caption, head, rows, centre, locale, empty = 'Nothing has been sent back yet.' } = props;
  const drawn = rows.flatMap((row) => {
    const interval = shareInterval(row.count.returned, row.count.units);
    return interval ? [{ ...row, interval, share: row.count.returned / row.count.units }] : [];
  });
  const middle = centre && centre.units > 0 ? centre.returned / centre.units : null;
  const x = shareScale(Math.max(middle ?? 0, ...drawn.map((row) => row.interval.high)), LEFT, RIGHT);
  const foot = TOP + drawn.length * STEP;
  return (
    <figure className="plot plot-fit">
      {drawn.length > 0 ? (
        <svg
          viewBox={`0 0 ${WIDE} ${foot + 60}`}
          role="img"
          aria-label={`${caption}. Share returned with its 95% interval; the figures are in the table below.`}
        >
          <FootMarks {...x} label={(share) => percentWords(share, locale)} top={TOP} foot={foot} />
          {middle === null ? null : <path d={`M${x.at(middle)} ${TOP}V${foot}`} className="plot-limit" />}
          {drawn.map((row, place) => (
            <Whisker key={row.key} row={row} y={TOP + place * STEP} at={x.at} />
          ))}
          <path d={`M${LEFT} ${foot}H${RIGHT}`} className="plot-axis" />
          <text x={LEFT} y={foot + 50}>
            {middle === null ? 'Returned' : `Returned; dashed: all together, ${percentWords(middle, locale)}`}
          </text>
        </svg>
      ) : null}
      <Table
        caption={caption}
        rows={rows}
        rowKey={(row) => row.key}
        empty={empty}
        columns={[
          {
            head,
            kind: 'rowhead',
            cell: (row) => (row.href ? <TextLink href={row.href}>{row.label}</TextLink> : row.label),
          },
          { head: 'Returned', kind: 'number', cell: ({ count }) => `${count.returned} of ${count.units}` },
          { head: '95% interval', kind: 'number', cell: ({ count }) => between(count, locale) },
          ...(rows.some((row) => row.mark)
            ? [{ head: 'Evidence', cell: (row: IntervalRow) => row.mark ?? 'none yet' }]
            : []),
        ]}
      />
    </figure>
  );
}

type Drawn = IntervalRow & { interval: { low: number; high: number }; share: number };

function Whisker({ row, y, at }: { row: Drawn; y: number; at: (share: number) => number }) {
  const { interval, share, mark, count } = row;
  const line = y + 32;
  const [low, high] = [at(interval.low), at(interval.high)];
  return (
    <g>
      <text x={LEFT} y={y + 16} className="plot-name">
        {cut(row.label, mark ? 24 : 36)}
      </text>
      <text x={RIGHT} y={y + 16} textAnchor="end" className={mark ? 'plot-word' : undefined}>
        {mark ? `${count.returned} of ${count.units}, ${mark}` : `${count.returned} of ${count.units}`}
      </text>
      <path
        d={`M${low} ${line}H${high}M${low} ${line - 5}v10M${high} ${line - 5}v10`}
        className="plot-whisker"
      />
      {mark ? (
        <rect x={at(share) - 5} y={line - 5} width={10} height={10} className="plot-flag" />
      ) : (
        <circle cx={at(share)} cy={line} r={4.5} className="plot-dot" />
      )}
    </g>
  );
}

function between({ returned, units }: Counted, locale: string): string {
  const interval = shareInterval(returned, units);
  return interval ? intervalWords(interval, locale) : 'none sent yet';
}
