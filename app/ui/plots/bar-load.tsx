import { Table } from '../page/table';
import { FootMarks } from './axes';
import { round, WIDE } from './ticks';

export type LoadDay = {
  key: string;
  label: string;
  hours: number;
  capacity: number;
};

type BarLoadProps = {
  caption: string;
  days: readonly LoadDay[];
  /** what the hours are, and what a bar stands for: promised work of a day unless said otherwise */
  hours?: string;
  per?: string;
};

const STEP = 32;
const TOP = 6;
const LEFT = 76;
const RIGHT = WIDE - 56;
const BAR = 14;

/**
 * Hours of promised work on the bench per day against the hours that the bench has, with the same figures in a table
 * under it. Hours are decimal and not negative; a day over its capacity is hatched and named.
 *
 * ```tsx
 * <BarLoad caption="Bench load, next five working days"
 *   days={[{ key: '2026-12-03', label: 'Thu 3', hours: 5.5, capacity: 7 }]} />
 * ```
 */
export function BarLoad({ caption, days, hours = 'Promised work', per = 'Day' }: BarLoadProps) {
  const top = niceTop(Math.max(1, ...days.flatMap((day) => [day.hours, day.capacity])));
  const at = (hours: number) => round(LEFT + ((RIGHT - LEFT) * hours) / top);
  const foot = TOP + days.length * STEP;
  return (
    <figure className="plot plot-fit">
      {days.length > 0 ? (
        <svg
          viewBox={`0 0 ${WIDE} ${foot + 60}`}
          role="img"
          aria-label={`${caption}. Hours per ${per.toLowerCase()}; the figures are in the table below.`}
        >
          <defs>
            <pattern
              id="load-over"
              width="6"
              height="6"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <path d="M0 0v6" className="plot-hatch" />
            </pattern>
          </defs>
          <FootMarks ticks={[0, top / 2, top]} at={at} label={(hours) => hours} top={TOP} foot={foot} />
          {days.map((day, place) => (
            <DayRow key={day.key} day={day} y={TOP + place * STEP} at={at} />
          ))}
          <path d={`M${LEFT} ${TOP}V${foot}`} className="plot-axis" />
          <text x={LEFT} y={foot + 50}>
            Hours; dashed: what the bench has
          </text>
        </svg>
      ) : null}
      <Table
        keep
        caption={caption}
        rows={days}
        rowKey={(day) => day.key}
        empty="No working days in this span."
        columns={[
          { head: per, kind: 'rowhead', cell: (day) => day.label },
          { head: hours, kind: 'number', cell: (day) => `${round(day.hours)} h` },
          { head: 'Bench has', kind: 'number', cell: (day) => `${round(day.capacity)} h` },
          { head: 'Left', kind: 'number', cell: (day) => leftOf(day) },
        ]}
      />
    </figure>
  );
}

function DayRow({ day, y, at }: { day: LoadDay; y: number; at: (hours: number) => number }) {
  const within = at(Math.min(day.hours, day.capacity));
  const bar = y + (STEP - BAR) / 2;
  const isOver = day.hours > day.capacity;
  return (
    <g>
      <text x={LEFT - 10} y={y + STEP / 2 + 5} textAnchor="end" className="plot-name">
        {day.label}
      </text>
      <rect x={LEFT} y={bar} width={round(within - LEFT)} height={BAR} className="plot-bar" />
      {isOver ? (
        <>
          <rect
            x={within}
            y={bar}
            width={round(at(day.hours) - within)}
            height={BAR}
            className="plot-over"
            fill="url(#load-over)"
          />
          <text x={WIDE} y={y + STEP / 2 + 5} textAnchor="end" className="plot-word">
            over
          </text>
        </>
      ) : null}
      <path d={`M${at(day.capacity)} ${y}v${STEP}`} className="plot-limit" />
    </g>
  );
}

function leftOf(day: LoadDay): string {
  const left = round(day.capacity - day.hours);
  return left < 0 ? `over by ${-left} h` : `${left} h`;
}

// The axis ends on an even hour, so that its middle is a whole one.
function niceTop(hours: number): number {
  return Math.ceil(hours / 2) * 2;
}
