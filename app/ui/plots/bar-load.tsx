import { Table } from '../page/table';

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

const HEIGHT = 200;
const LEFT = 44;
const TOP = 12;
const BOTTOM = 44;
const STEP = 56;

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
  const width = LEFT + Math.max(1, days.length) * STEP + 8;
  const y = (hours: number) => TOP + (HEIGHT - TOP) * (1 - hours / top);
  const ticks = [0, top / 2, top];
  return (
    <figure className="plot">
      <svg
        viewBox={`0 0 ${width} ${HEIGHT + BOTTOM}`}
        role="img"
        aria-label={`${caption}. Hours per ${per.toLowerCase()}; the figures are in the table below.`}
        style={{ maxInlineSize: `${width * 1.4}px` }}
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
        {ticks.map((hours) => (
          <g key={hours}>
            <path d={`M${LEFT} ${y(hours)}H${width}`} className="plot-grid" />
            <text x={LEFT - 8} y={y(hours) + 4} textAnchor="end">
              {hours} h
            </text>
          </g>
        ))}
        {days.map((day, index) => {
          const x = LEFT + index * STEP + 10;
          const within = Math.min(day.hours, day.capacity);
          return (
            <g key={day.key}>
              <rect x={x} y={y(within)} width={STEP - 20} height={y(0) - y(within)} className="plot-bar" />
              {day.hours > day.capacity ? (
                <rect
                  x={x}
                  y={y(day.hours)}
                  width={STEP - 20}
                  height={y(day.capacity) - y(day.hours)}
                  className="plot-over"
                  fill="url(#load-over)"
                />
              ) : null}
              <path d={`M${x - 6} ${y(day.capacity)}h${STEP - 8}`} className="plot-limit" />
              <text x={x + STEP / 2 - 10} y={HEIGHT + 18} textAnchor="middle">
                {day.label}
              </text>
              {day.hours > day.capacity ? (
                <text x={x + STEP / 2 - 10} y={HEIGHT + 36} textAnchor="middle" className="plot-word">
                  over
                </text>
              ) : null}
            </g>
          );
        })}
        <path d={`M${LEFT} ${y(0)}H${width}`} className="plot-axis" />
      </svg>
      <Table
        keep
        caption={caption}
        rows={days}
        rowKey={(day) => day.key}
        empty="No working days in this span."
        columns={[
          { key: 'day', head: per, kind: 'rowhead', cell: (day) => day.label },
          { key: 'hours', head: hours, kind: 'number', cell: (day) => `${round(day.hours)} h` },
          { key: 'capacity', head: 'Bench has', kind: 'number', cell: (day) => `${round(day.capacity)} h` },
          { key: 'left', head: 'Left', kind: 'number', cell: (day) => leftOf(day) },
        ]}
      />
    </figure>
  );
}

function leftOf(day: LoadDay): string {
  const left = round(day.capacity - day.hours);
  return left < 0 ? `over by ${-left} h` : `${left} h`;
}

function round(hours: number): number {
  return Math.round(hours * 10) / 10;
}

// The axis ends on an even hour, so that its middle is a whole one.
function niceTop(hours: number): number {
  return Math.ceil(hours / 2) * 2;
}
