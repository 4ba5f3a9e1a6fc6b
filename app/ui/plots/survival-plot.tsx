import { scaleLinear } from 'd3-scale';
import { area, curveStepAfter, line } from 'd3-shape';
import { intervalWords, percentWords } from '@/lib/returns/rules/share-words';
import { atRiskOn, type RiskCount, returnedBy } from '@/lib/statistics/survival';
import { Table } from '../page/table';
import { LevelMarks } from './axes';
import { round, shareScale, WIDE } from './ticks';

type SurvivalPlotProps = {
  caption: string;
  counts: readonly RiskCount[];
  /** days of the term: the plot ends there */
  until: number;
  locale: string;
};

type Point = { days: number; share: number; low: number; high: number };

const TOP = 30;
const FOOT = 200;
const LEFT = 52;
const RIGHT = WIDE - 12;
// 90 days are told in thirds: whole days where it goes.
const PARTS = [3, 4, 5];

/**
 * How many units have come back by each day of the term, as a curve with its 95 % band and the units still watched under it,
 * and the same in a table. The curve ends where nobody was watched any longer. Draws a sentence where nobody was watched a day.
 *
 * ```tsx
 * <SurvivalPlot caption="Returned by day, USB-C socket" counts={counts} until={90} locale="en-GB" />
 * ```
 */
export function SurvivalPlot({ caption, counts, until, locale }: SurvivalPlotProps) {
  const points = pointsOf(counts, until);
  const last = points.at(-1);
  if (!last) return <p className="empty">No unit has been out for a day yet.</p>;
  const x = scaleLinear().domain([0, until]).range([LEFT, RIGHT]);
  const y = shareScale(Math.max(...points.map((point) => point.high)), FOOT, TOP);
  const at = (days: number) => round(x(days));
  const parts = PARTS.find((each) => until % each === 0) ?? 4;
  const ticks = Array.from({ length: parts + 1 }, (_, part) => Math.round((until * part) / parts));
  const band = area<Point>()
    .x((point) => at(point.days))
    .y0((point) => y.at(point.low))
    .y1((point) => y.at(point.high))
    .curve(curveStepAfter);
  const curve = line<Point>()
    .x((point) => at(point.days))
    .y((point) => y.at(point.share))
    .curve(curveStepAfter);
  return (
    <figure className="plot plot-fit">
      <svg
        viewBox={`0 0 ${WIDE} ${FOOT + 92}`}
        role="img"
        aria-label={`${caption}. Share returned by day, with its 95% band; the figures are in the table below.`}
      >
        <text x={4} y={16}>
          Returned by day of cover
        </text>
        <LevelMarks {...y} label={(share) => percentWords(share, locale)} left={LEFT} right={RIGHT} />
        <path d={band(points) ?? ''} className="plot-band" />
        <path d={curve(points) ?? ''} className="plot-line" />
        <path d={`M${LEFT} ${FOOT}H${RIGHT}`} className="plot-axis" />
        {ticks.map((days, part) => (
          <g key={days}>
            <path d={`M${at(days)} ${FOOT}v6`} className="plot-axis" />
            <text x={at(days)} y={FOOT + 24} textAnchor={part === parts ? 'end' : 'middle'}>
              {days}
            </text>
            <text x={at(days)} y={FOOT + 80} textAnchor={part === parts ? 'end' : 'middle'}>
              {atRiskOn(counts, Math.max(1, days))}
            </text>
          </g>
        ))}
        <text x={4} y={FOOT + 56}>
          Still watched and well
        </text>
      </svg>
      <Table
        keep
        caption={caption}
        rows={ticks.slice(1).filter((days) => days <= last.days)}
        rowKey={String}
        empty={`Nobody has been watched for ${ticks[1]} days yet.`}
        columns={[
          { head: 'By day', kind: 'rowhead', cell: (days) => days },
          { head: 'Returned, 95% interval', kind: 'number', cell: (days) => told(counts, days, locale) },
          { head: 'Watched', kind: 'number', cell: (days) => atRiskOn(counts, days) },
        ]}
      />
    </figure>
  );
}

function told(counts: readonly RiskCount[], days: number, locale: string): string {
  const by = returnedBy(counts, days);
  return by ? `${percentWords(by.share, locale)} (${intervalWords(by.interval, locale)})` : 'unknown';
}

/** The band is the interval that the figures are told with, taken on each day of a return and at each tenth of the term. */
function pointsOf(counts: readonly RiskCount[], until: number): Point[] {
  const last = Math.min(
    until,
    counts.reduce((latest, count) => Math.max(latest, count.days), 0),
  );
  const tenths = Array.from({ length: 10 }, (_, part) => Math.max(1, Math.round((until * part) / 10)));
  const returns = counts.filter((count) => count.returned > 0).map((count) => count.days);
  const days = [...new Set([...tenths, ...returns, last])].filter((day) => day > 0 && day <= last);
  const points = days
    .sort((a, b) => a - b)
    .flatMap((day) => {
      const by = returnedBy(counts, day);
      return by ? [{ days: day, share: by.share, ...by.interval }] : [];
    });
  const first = points[0];
  return first && first.days > 0 ? [{ ...first, days: 0, share: 0, low: 0 }, ...points] : points;
}
