import type { ReactNode } from 'react';

type Marks = { ticks: readonly number[]; at: (value: number) => number; label: (value: number) => ReactNode };

/** Lines across a plot, each with its mark before it; drawn first, so that what is shown lies over them. */
export function LevelMarks({ ticks, at, label, left, right }: Marks & { left: number; right: number }) {
  return ticks.map((tick) => (
    <g key={tick}>
      <path d={`M${left} ${at(tick)}H${right}`} className="plot-grid" />
      <text x={left - 8} y={at(tick) + 5} textAnchor="end">
        {label(tick)}
      </text>
    </g>
  ));
}

/** Lines down a plot of rows, each with its mark under it. */
export function FootMarks({ ticks, at, label, top, foot }: Marks & { top: number; foot: number }) {
  return ticks.map((tick) => (
    <g key={tick}>
      <path d={`M${at(tick)} ${top}V${foot}`} className="plot-grid" />
      <text x={at(tick)} y={foot + 22} textAnchor="middle">
        {label(tick)}
      </text>
    </g>
  ));
}
