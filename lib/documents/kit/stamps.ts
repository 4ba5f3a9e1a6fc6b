import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { paintLines } from '@/lib/documents/kit/flow';
import { grid, ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines, inkWidth, type Line } from '@/lib/documents/kit/lines';
import type { Sheet } from '@/lib/documents/kit/sheet';
import type { StampState } from '@/lib/jobs/rules/run-of-stamps';

/** One stage of the run as it stood when the paper was drawn. */
export type Stamp = { label: string; day: Day | null; state: StampState };

const WORDS: Record<StampState, string> = {
  done: 'done',
  now: 'here now',
  waiting: 'to come',
  skipped: 'not needed',
  stopped: 'stopped',
};

const inset = 6;
const radius = 2.6;

/**
 * The run of stamps under a docket, as a list, with the marks it has on screen. A stage reached has a solid frame, a tick or,
 * where the unit is, an arrow, and its day; one to come a dotted frame and a ring; one passed over no frame and its name struck
 * out; the one that ended the run a double frame and a barred mark. What has no day says so in words, so that colour is never the only sign.
 */
export function runOfStamps(sheet: Sheet, stamps: readonly Stamp[], locale: string): void {
  if (stamps.length === 0) return;
  const space = 8;
  const perRow = Math.min(stamps.length, 6);
  const width = (sheet.width - space * (perRow - 1)) / perRow;
  const set = stamps.map(({ label, day, state }) => {
    const isReached = state === 'done' || state === 'now' || state === 'stopped';
    const name = styled(styles.small, { face: 'strong', colour: isReached ? ink.accent : ink.quiet });
    const date = styled(styles.small, { colour: isReached ? ink.text : ink.quiet });
    const inner = width - inset * 2 - 12;
    const said = isReached && day ? formatDay(day, locale, 'short') : WORDS[state];
    return {
      state,
      label: { style: name, lines: breakLines(`${label} `, name, inner) },
      date: { style: date, lines: breakLines(said, date, inner) },
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
        drawFrame(doc, stamp.state, { x, y, width, height });
        drawMark(doc, stamp.state, { x: x + inset + 3, y: y + 4 + styles.small.leading / 2 });
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
      if (stamp.state === 'skipped') {
        sheet.artifact(() => strike(sheet, stamp.label, { x: x + inset + 12, y: y + 4 }));
      }
    });
  });
  sheet.y += height + 10 * sheet.scale;
}

type At = { x: number; y: number };
type Paper = Sheet['doc'];

function drawFrame(doc: Paper, state: StampState, at: At & { width: number; height: number }): void {
  const { x, y, width, height } = at;
  if (state === 'skipped') return;
  doc.roundedRect(x, y, width, height, grid.radius);
  if (state === 'waiting')
    doc.lineWidth(0.7).strokeColor(ink.perforation).dash(1.5, { space: 2 }).stroke().undash();
  else doc.lineWidth(1.1).strokeColor(ink.accent).stroke();
  if (state !== 'stopped') return;
  doc.roundedRect(x + 2.2, y + 2.2, width - 4.4, height - 4.4, grid.radius);
  doc.lineWidth(0.7).stroke();
}

function drawMark(doc: Paper, state: StampState, { x, y }: At): void {
  if (state === 'skipped') {
    doc
      .moveTo(x - radius, y)
      .lineTo(x + radius, y)
      .lineWidth(1.1)
      .stroke(ink.quiet);
    return;
  }
  if (state === 'done') {
    doc
      .moveTo(x - radius, y)
      .lineTo(x - radius * 0.3, y + radius * 0.7)
      .lineTo(x + radius, y - radius * 0.8)
      .lineWidth(1.2)
      .stroke(ink.accent);
    return;
  }
  if (state === 'now') {
    doc
      .moveTo(x - radius * 0.7, y - radius)
      .lineTo(x + radius, y)
      .lineTo(x - radius * 0.7, y + radius)
      .closePath()
      .fill(ink.accent);
    return;
  }
  const mark = doc.circle(x, y, radius);
  if (state === 'waiting') {
    mark.lineWidth(0.8).stroke(ink.perforation);
    return;
  }
  mark.fill(ink.accent);
  doc.rect(x - 1.7, y - 0.5, 3.4, 1).fill(ink.white);
}

function strike(sheet: Sheet, label: { style: Style; lines: readonly Line[] }, { x, y }: At): void {
  label.lines.forEach((line, index) => {
    const at = y + (index + 0.55) * label.style.leading;
    const end = x + inkWidth(line, label.style.size);
    sheet.doc.moveTo(x, at).lineTo(end, at).lineWidth(0.8).stroke(label.style.colour);
  });
}
