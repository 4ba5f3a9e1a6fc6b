import { barcodeFigure } from '@/lib/documents/kit/codes';
import { limitedLines } from '@/lib/documents/kit/fit';
import { heightOf, paintLines, placeLines } from '@/lib/documents/kit/flow';
import { grid, ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines, type Line } from '@/lib/documents/kit/lines';
import { paintPerforation } from '@/lib/documents/kit/marks';
import type { Sheet } from '@/lib/documents/kit/sheet';

export type AddressLabel = {
  to: readonly string[];
  from: readonly string[];
  /** The number as shown, and as the bars hold it. */
  shown: string;
  coded: string;
  cutHint: string;
};

export const labelHeight = 134;

const side = 150;
const pad = 14;

type Set = { lines: Line[]; style: Style };

/** Lines in the largest size in which all of them have room; at the smallest, run together and ended by "…". */
function largest(
  lines: readonly string[],
  base: Style,
  sizes: readonly number[],
  room: { width: number; height: number },
): Set {
  const styleOf = (size: number): Style => ({ ...base, size, leading: size * 1.28 });
  for (const size of sizes) {
    const style = styleOf(size);
    const set = lines.flatMap((line) => breakLines(line, style, room.width));
    if (heightOf(set, style) <= room.height) return { lines: set, style };
  }
  const style = styleOf(sizes.at(-1) ?? base.size);
  const most = Math.floor(room.height / style.leading);
  return { lines: limitedLines(lines.join(', '), style, room.width, most), style };
}

/** A label to cut off along its perforation, at the foot of the page: who it goes to, whose job it is, who sends it. */
export function addressLabel(sheet: Sheet, label: AddressLabel): void {
  const hint = styles.small.leading + 4;
  sheet.room(labelHeight + hint);
  sheet.y = sheet.bottom - labelHeight - hint - 8;
  const x = sheet.left;
  const top = sheet.y + hint;
  const { width } = sheet;
  const right = x + width;
  sheet.artifact(() => {
    const below = top + labelHeight;
    paintPerforation(sheet, { x1: x, y1: top, x2: right, y2: top });
    paintPerforation(sheet, { x1: x, y1: below, x2: right, y2: below });
    paintPerforation(sheet, { x1: x, y1: top, x2: x, y2: below });
    paintPerforation(sheet, { x1: right, y1: top, x2: right, y2: below });
    const rule = sheet.doc.lineWidth(0.6).strokeColor(ink.rule);
    rule
      .moveTo(right - side - pad, top + pad)
      .lineTo(right - side - pad, below - pad)
      .stroke();
  });
  sheet.element(sheet.root, 'Sect', (part) => {
    const cut = breakLines(label.cutHint, styles.small, width);
    sheet.element(part, 'H2', (h) =>
      placeLines(sheet, h, cut.slice(0, 1), { x, width, y: sheet.y }, styles.small),
    );
    const toWidth = width - side - pad * 3;
    const word = styled(styles.body, { face: 'strong', colour: ink.accent });
    sheet.element(part, 'P', (p) =>
      placeLines(
        sheet,
        p,
        breakLines('To ', word, toWidth),
        { x: x + pad, width: toWidth, y: top + pad - 3 },
        word,
      ),
    );
    const toRoom = { width: toWidth, height: labelHeight - pad * 2 - 14 };
    const { lines, style } = largest(label.to, styles.title, [17, 15, 13, 11, 9], toRoom);
    sheet.element(part, 'P', (p) =>
      placeLines(sheet, p, lines, { x: x + pad, width: toWidth, y: top + pad + 14 }, style),
    );

    const at = { x: right - side, width: side - pad };
    sheet.element(part, 'P', (p) =>
      sheet.mark(p, () => {
        paintLines(sheet, breakLines('Job ', word, at.width), { ...at, y: top + pad - 3 }, word);
        const number = styled(styles.number, { size: 15, leading: 20 });
        paintLines(sheet, breakLines(label.shown, number, at.width), { ...at, y: top + pad + 10 }, number);
      }),
    );
    const bars = { x: at.x - 10, y: top + pad + 34, width: side - 4, height: 26 };
    barcodeFigure(sheet, part, label.coded, `Code 128 bar code of job number ${label.shown}`, bars);
    if (label.from.length === 0) return;
    const fromY = top + pad + 66;
    const room = top + labelHeight - 6 - fromY - styles.small.leading;
    const sender = largest(label.from, styles.small, [8, 7, 6.2], { width: at.width, height: room });
    const small = styled(styles.small, { face: 'strong' });
    sheet.element(part, 'P', (p) => {
      placeLines(sheet, p, breakLines('From ', small, at.width), { ...at, y: fromY }, small);
      placeLines(sheet, p, sender.lines, { ...at, y: fromY + small.leading }, sender.style);
    });
  });
  sheet.y = sheet.bottom;
}

/** Height that the label and its hint take from the page. */
export const labelRoom = labelHeight + grid.margin / 2;
