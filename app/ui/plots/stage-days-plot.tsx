import { scaleLinear } from 'd3-scale';
import { STAGE_WORDS } from '@/lib/jobs/rules/stages';
import type { DaysBy, StageDays, WaitsOn } from '@/lib/promise/rules/turnaround';
import { Table } from '../page/table';
import { FootMarks } from './axes';
import { round, WIDE } from './ticks';

type StageDaysPlotProps = { caption: string; stages: readonly StageDays[]; locale: string };

const STEP = 48;
const TOP = 6;
const LEFT = 12;
const RIGHT = WIDE - 24;

const WAITS_ON: Record<WaitsOn, string> = { us: 'us', customer: 'the customer', parts: 'parts' };

/**
 * Where units wait: for each stage the days by which half of all stays had ended, with the 95 % interval, and a ring where four
 * of five had; and the same in a table. A whisker without an end is one whose end is not in sight yet.
 *
 * ```tsx
 * <StageDaysPlot caption="Days in each stage" stages={stages} locale="en-GB" />
 * ```
 */
export function StageDaysPlot({ caption, stages, locale }: StageDaysPlotProps) {
  const longest = Math.max(
    1,
    ...stages.flatMap(({ half, mostly }) => [half?.high ?? half?.days ?? 0, mostly?.days ?? 0]),
  );
  const scale = scaleLinear().domain([0, longest]).range([LEFT, RIGHT]).nice(5);
  const at = (days: number) => round(scale(days));
  const foot = TOP + stages.length * STEP;
  const ticks = scale.ticks(5);
  return (
    <figure className="plot plot-fit">
      {stages.length > 0 ? (
        <svg
          viewBox={`0 0 ${WIDE} ${foot + 60}`}
          role="img"
          aria-label={`${caption}. Days by which half of all stays had ended, with the 95% interval; the figures are in the table below.`}
        >
          <FootMarks ticks={ticks} at={at} label={(days) => inDays(days, locale)} top={TOP} foot={foot} />
          {stages.map((stage, place) => (
            <Stay key={stage.stage} stage={stage} y={TOP + place * STEP} at={at} />
          ))}
          <path d={`M${LEFT} ${foot}H${RIGHT}`} className="plot-axis" />
          <text x={LEFT} y={foot + 50}>
            Days; bar: half had ended, ring: four of five
          </text>
        </svg>
      ) : null}
      <Table
        caption={caption}
        rows={stages}
        rowKey={({ stage }) => stage}
        empty="No unit has been in a stage yet."
        columns={[
          { head: 'Stage', kind: 'rowhead', cell: ({ stage }) => STAGE_WORDS[stage].label },
          { head: 'Waits on', cell: ({ waitsOn }) => WAITS_ON[waitsOn] },
          { head: 'Stays', kind: 'number', cell: ({ stays }) => stays },
          { head: 'Go on', kind: 'number', cell: ({ stillHere }) => stillHere },
          { head: 'Half ended by, 95% interval', kind: 'number', cell: ({ half }) => told(half, locale) },
          { head: 'Four of five by', kind: 'number', cell: ({ mostly }) => told(mostly, locale) },
        ]}
      />
    </figure>
  );
}

function Stay({ stage, y, at }: { stage: StageDays; y: number; at: (days: number) => number }) {
  const { half, mostly, waitsOn } = stage;
  const line = y + 32;
  return (
    <g>
      <text x={LEFT} y={y + 16} className="plot-name">
        {STAGE_WORDS[stage.stage].label}
      </text>
      <text x={RIGHT} y={y + 16} textAnchor="end">
        {`waits on ${WAITS_ON[waitsOn]}`}
      </text>
      {half ? (
        <>
          <rect x={LEFT} y={line - 5} width={at(half.days) - LEFT} height={10} className="plot-span" />
          <path d={whisker(half, line, at)} className="plot-line" />
        </>
      ) : null}
      {mostly ? <circle cx={at(mostly.days)} cy={line} r={4.5} className="plot-ring" /> : null}
    </g>
  );
}

function whisker({ low, high }: DaysBy, line: number, at: (days: number) => number): string {
  const end = high === null ? '' : `M${at(high)} ${line - 5}v10`;
  return `M${at(low)} ${line}H${high === null ? RIGHT : at(high)}M${at(low)} ${line - 5}v10${end}`;
}

function told(by: DaysBy | null, locale: string): string {
  if (!by) return 'not yet';
  const upTo = by.high === null ? 'open' : inDays(by.high, locale);
  return `${inDays(by.days, locale)} (${inDays(by.low, locale)} to ${upTo})`;
}

function inDays(days: number, locale: string): string {
  return new Intl.NumberFormat(locale, { maximumFractionDigits: 1 }).format(days);
}
