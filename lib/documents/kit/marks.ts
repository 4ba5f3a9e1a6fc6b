import { grid, ink } from '@/lib/documents/kit/ink';
import type { Sheet } from '@/lib/documents/kit/sheet';

type Segment = { x1: number; y1: number; x2: number; y2: number };

/** A row of round holes, as between the stub and the body of a docket. Drawn inside an artifact that is already open. */
export function paintPerforation(sheet: Sheet, line: Segment): void {
  const length = Math.hypot(line.x2 - line.x1, line.y2 - line.y1);
  const holes = Math.max(1, Math.round(length / 4.2));
  for (let hole = 0; hole <= holes; hole += 1) {
    const along = hole / holes;
    sheet.doc.circle(line.x1 + (line.x2 - line.x1) * along, line.y1 + (line.y2 - line.y1) * along, 0.75);
  }
  sheet.doc.fill(ink.perforation);
}

type Box = { x: number; y: number; width: number; height: number };

/** The outline of a docket: tinted stub, perforation, and a half-round notch where the perforation meets each edge. */
export function paintDocketFrame(sheet: Sheet, box: Box, stub: number): void {
  const { doc } = sheet;
  const { x, y, width, height } = box;
  const cut = x + stub;
  const notch = Math.min(4.5, height / 5);
  doc.roundedRect(x, y, stub, height, grid.radius).fill(ink.stub);
  doc.lineWidth(0.9).strokeColor(ink.text).roundedRect(x, y, width, height, grid.radius).stroke();
  for (const [edge, sweep, outside] of [
    [y, 1, -1.2],
    [y + height, 0, 0.2],
  ] as const) {
    doc.rect(cut - notch, edge + outside, notch * 2, 1).fill(ink.white);
    doc
      .path(`M ${cut - notch} ${edge} A ${notch} ${notch} 0 0 ${1 - sweep} ${cut + notch} ${edge}`)
      .fillAndStroke(ink.white, ink.text);
    doc.rect(cut - notch + 0.45, edge + outside, notch * 2 - 0.9, 1).fill(ink.white);
  }
  paintPerforation(sheet, { x1: cut, y1: y + notch + 5, x2: cut, y2: y + height - notch - 5 });
}
