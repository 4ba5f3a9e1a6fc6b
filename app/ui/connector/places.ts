import type { Pin, PinTable } from '@/lib/bench/rules/pin-table';
import type { Probe } from '@/lib/bench/rules/probes';

/** Sizes of the drawing in CSS pixels; pins and gaps are wide enough for a gloved finger (WCAG 2.2, 2.5.8: 24 at least). */
export const PIN = 46;
export const GAP = 30;
const PITCH = PIN + GAP;
const EDGE = 8;
const ARC = 34;

export type Box = { x: number; y: number; width: number; height: number };
export type Drawn = { probe: Probe; box: Box; arc?: string };
export type Layout = { width: number; height: number; pins: { pin: Pin; box: Box }[]; pairs: Drawn[] };

/** Where every pin and pair of a table stands on its drawing: rows from top to bottom, positions from left to right. */
export function layOut(table: PinTable, probes: readonly Probe[]): Layout {
  const rows = [...new Set(table.pins.map((pin) => pin.row))].sort((a, b) => a - b);
  const first = Math.min(...table.pins.map((pin) => pin.position));
  const last = Math.max(...table.pins.map((pin) => pin.position));
  const boxOf = (pin: Pin): Box => ({
    x: EDGE + (pin.position - first) * PITCH,
    y: EDGE + rows.indexOf(pin.row) * PITCH,
    width: PIN,
    height: PIN,
  });
  const pins = table.pins.map((pin) => ({ pin, box: boxOf(pin) }));
  const boxes = new Map(pins.map(({ pin, box }) => [pin.pin, box] as const));
  let arcs = 0;
  const bottom = EDGE + (rows.length - 1) * PITCH + PIN;
  const pairs = probes
    .filter((probe) => probe.kind === 'pair')
    .flatMap((probe): Drawn[] => {
      const [a, b] = [boxes.get(probe.pins[0] ?? ''), boxes.get(probe.pins[1] ?? '')];
      if (!a || !b) return [];
      const between = gapBetween(a, b);
      if (between) return [{ probe, box: between }];
      const y = bottom + 6 + arcs * ARC;
      arcs += 1;
      return [arcBelow(probe, a, b, y)];
    });
  return {
    width: 2 * EDGE + (last - first) * PITCH + PIN,
    height: bottom + EDGE + arcs * ARC,
    pins,
    pairs,
  };
}

function gapBetween(a: Box, b: Box): Box | null {
  const dx = Math.abs(a.x - b.x);
  const dy = Math.abs(a.y - b.y);
  if (dy === 0 && dx === PITCH) return { x: Math.min(a.x, b.x) + PIN, y: a.y, width: GAP, height: PIN };
  if (dx === 0 && dy === PITCH) return { x: a.x, y: Math.min(a.y, b.y) + PIN, width: PIN, height: GAP };
  return null;
}

// Neighbours that rows do not show are joined by a bow below the rows, with its target in the middle.
function arcBelow(probe: Probe, a: Box, b: Box, y: number): Drawn {
  const [from, to] = [a.x + PIN / 2, b.x + PIN / 2];
  const middle = y + GAP / 2;
  return {
    probe,
    box: { x: (from + to) / 2 - PIN / 2, y, width: PIN, height: GAP },
    arc: `M${from} ${a.y + PIN}V${middle}H${to}V${b.y + PIN}`,
  };
}
