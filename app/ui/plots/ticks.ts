import { scaleLinear } from 'd3-scale';

/** Every plot is drawn on paper this wide, in user units, and scaled to its column (plots.css sizes its text). */
export const WIDE = 440;

/** A scale of shares from nought to just past the highest, never past 1, with at most five marks. */
export function shareScale(highest: number, from: number, to: number) {
  const top = Math.min(1, Math.max(0.02, highest));
  const scale = scaleLinear().domain([0, top]).range([from, to]).nice(4);
  return { at: (share: number) => round(scale(share)), ticks: scale.ticks(4) };
}

/** Coordinates and hours with a decimal at the most: finer ones only make a page longer. */
export function round(at: number): number {
  return Math.round(at * 10) / 10;
}

/** A name that would run into the figures beside it is cut; the table under the plot has the whole of it. */
export function cut(label: string, most: number): string {
  return label.length <= most ? label : `${label.slice(0, most - 1).trimEnd()}…`;
}
