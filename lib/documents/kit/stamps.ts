import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { paintLines } from '@/lib/documents/kit/flow';
import { grid, ink, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines } from '@/lib/documents/kit/lines';
import type { Sheet } from '@/lib/documents/kit/sheet';

/** One stage of the run: stamped with its day, or still to come. */
export type Stamp = { label: string; day: Day | null };

const inset = 6;

/**
 * The run of stamps under a docket, as a list: a stamped one has a solid frame, a filled mark and its day, one still to
 * come a dotted frame, an open mark and the words "to come", so that colour is never the only sign.
 */
export function runOfStamps(sheet: Sheet, stamps: readonly Stamp[], locale: string): void {
  if (stamps.length === 0) return;
  const space = 8;
  const perRow = Math.min(stamps.length, 6);
  const width = (sheet.width - space * (perRow - 1)) / perRow;
  const set = stamps.map((stamp) => {
    const done = stamp.day !== null;
    const label = styled(styles.small, { face: 'strong', colour: done ? ink.accent : ink.quiet });
    const date = styled(styles.small, { colour: done ? ink.text : ink.quiet });
    const inner = width - inset * 2 - 12;
    return {
      done,
      label: { style: label, lines: breakLines(`${stamp.label} `, label, inner) },
      date: {
        style: date,
        lines: breakLines(stamp.day ? formatDay(stamp.day, locale, 'short') : 'to come', date, inner),
      },
    };
  });
  const height =
    Math.max(...set.map((s) => (s.label.lines.length + s.date.lines.length) * styles.small.leading)) + 8;
  sheet.element(sheet.root, 'L', (list) => {
    set.forEach((stamp, index) => {
      const column = index % perRow;
      if (column === 0 && index > 0) sheet.y += height + space;
      const x = sheet.left + column * (width + space);
      const y = sheet.y;
      sheet.artifact(() => {
        const { doc } = sheet;
        const box = doc.roundedRect(x, y, width, height, grid.radius);
        if (stamp.done) box.lineWidth(1.1).strokeColor(ink.accent).stroke();
        else box.lineWidth(0.7).strokeColor(ink.perforation).dash(1.5, { space: 2 }).stroke().undash();
        const mark = doc.circle(x + inset + 3, y + 4 + styles.small.leading / 2, 2.6);
        if (stamp.done) mark.fill(ink.accent);
        else mark.lineWidth(0.8).stroke(ink.perforation);
        if (column < perRow - 1 && index < set.length - 1) {
          doc
            .lineWidth(0.7)
            .moveTo(x + width, y + height / 2)
            .lineTo(x + width + space, y + height / 2)
            .stroke(ink.rule);
        }
      });
      sheet.element(list, 'LI', (entry) =>
        sheet.element(entry, 'LBody', (body) =>
          sheet.mark(body, () => {
            const at = { x: x + inset + 12, width: width - inset * 2 - 12, y: y + 4 };
            paintLines(sheet, stamp.label.lines, at, stamp.label.style);
            const under = { ...at, y: at.y + stamp.label.lines.length * stamp.label.style.leading };
            paintLines(sheet, stamp.date.lines, under, stamp.date.style);
          }),
        ),
      );
    });
  });
  sheet.y += height + 10 * sheet.scale;
}
