import { scalePoint } from 'd3-scale';
import { curveStep, line } from 'd3-shape';
import type { ChartPoint, PChart } from '@/lib/returns/rules/p-chart';
import { intervalWords, percentWords } from '@/lib/returns/rules/share-words';
import { Table } from '../page/table';
import { LevelMarks } from './axes';
import { round, shareScale, WIDE } from './ticks';

type ShareChartProps = {
  caption: string;
  chart: PChart;
  /** 'Nov 26' for '2026-11' */
  monthLabel: (month: string) => string;
  locale: string;
  /** what is counted: 'Returned' of units, unless said otherwise */
  counted?: string;
};

const TOP = 30;
const FOOT = 210;
const LEFT = 52;
const RIGHT = WIDE - 14;
const LABELS = 6;

/**
 * A share by month with the limits within which chance alone would keep it, each month's own 95 % interval, and the same in a
 * table. A month outside the limits is a square and named; one with too few units for its limits is a ring.
 *
 * ```tsx
 * <ShareChart caption="Returned by month of dispatch" chart={chart} monthLabel={monthLabel} locale="en-GB" />
 * ```
 */
export function ShareChart({ caption, chart, monthLabel, locale, counted = 'Returned' }: ShareChartProps) {
  const { points, centre } = chart;
  const x = scalePoint(
    points.map((point) => point.month),
    [LEFT + 14, RIGHT - 14],
  );
  const at = (month: string) => round(x(month) ?? LEFT);
  const y = shareScale(Math.max(centre, ...points.flatMap(highest)), FOOT, TOP);
  const limited = points.filter((point) => point.low !== null);
  const limit = (side: 'low' | 'high') =>
    line<ChartPoint>()
      .x((point) => at(point.month))
      .y((point) => y.at(point[side] ?? centre))
      .curve(curveStep)(limited) ?? '';
  const every = Math.ceil(points.length / LABELS);
  return (
    <figure className="plot plot-fit">
      <svg
        viewBox={`0 0 ${WIDE} ${FOOT + 64}`}
        role="img"
        aria-label={`${caption}. Share by month with its limits; the figures are in the table below.`}
      >
        <text x={4} y={16}>
          {counted}
        </text>
        <LevelMarks {...y} label={(share) => percentWords(share, locale)} left={LEFT} right={RIGHT} />
        <path d={`M${LEFT} ${y.at(centre)}H${RIGHT}`} className="plot-centre" />
        <path d={limit('low')} className="plot-limit" />
        <path d={limit('high')} className="plot-limit" />
        {points.map((point) => (
          <Month key={point.month} point={point} x={at(point.month)} at={y.at} />
        ))}
        <path d={`M${LEFT} ${FOOT}H${RIGHT}`} className="plot-axis" />
        {points.map((point, place) =>
          (points.length - 1 - place) % every === 0 ? (
            <text key={point.month} x={at(point.month)} y={FOOT + 24} textAnchor="middle">
              {monthLabel(point.month)}
            </text>
          ) : null,
        )}
        <text x={LEFT} y={FOOT + 54}>
          {`Line: all months, ${percentWords(centre, locale)}; dashed: limits`}
        </text>
      </svg>
      <Table
        caption={caption}
        rows={points}
        rowKey={(point) => point.month}
        columns={[
          { head: 'Month', kind: 'rowhead', cell: (point) => monthLabel(point.month) },
          { head: counted, kind: 'number', cell: (point) => `${point.returned} of ${point.units}` },
          {
            head: '95% interval',
            kind: 'number',
            cell: (point) => (point.interval ? intervalWords(point.interval, locale) : 'none'),
          },
          { head: 'Limits', cell: verdict },
        ]}
      />
    </figure>
  );
}

function Month({ point, x, at }: { point: ChartPoint; x: number; at: (share: number) => number }) {
  const { share, interval, out, isSmall } = point;
  if (share === null || !interval) return null;
  const y = at(share);
  return (
    <g>
      <path d={`M${x} ${at(interval.low)}V${at(interval.high)}`} className="plot-whisker" />
      {out ? (
        <>
          <rect x={x - 5} y={y - 5} width={10} height={10} className="plot-flag" />
          <text x={x - 10} y={y + 5} textAnchor="end" className="plot-word">
            {out}
          </text>
        </>
      ) : (
        <circle cx={x} cy={y} r={4.5} className={isSmall ? 'plot-ring' : 'plot-dot'} />
      )}
    </g>
  );
}

function highest({ high, interval, isSmall }: ChartPoint): number[] {
  // The limits of a month with few units would squeeze all others to the foot.
  return [isSmall ? 0 : (high ?? 0), interval?.high ?? 0];
}

function verdict({ out, isSmall, units }: ChartPoint): string {
  if (units === 0) return 'nothing counted';
  if (out) return out === 'above' ? 'above the limits' : 'below the limits';
  return isSmall ? 'few, within chance' : 'within';
}
