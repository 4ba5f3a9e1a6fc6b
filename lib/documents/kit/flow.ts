import { ink, type Style, styles } from '@/lib/documents/kit/ink';
import { breakLines, drawLine, inkWidth, type Line } from '@/lib/documents/kit/lines';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import type { Content } from '@/lib/documents/kit/words';

/** The column that running content is set in. */
export type Column = { x: number; width: number };

export type Align = 'left' | 'right' | 'centre';

export function heightOf(lines: readonly Line[], style: Style): number {
  return lines.length * style.leading;
}

export type Place = Column & { y: number; align?: Align };

function shiftOf(line: Line, { align = 'left', width }: Place, style: Style): number {
  if (align === 'left') return 0;
  const spare = width - inkWidth(line, style.size);
  return align === 'right' ? spare : spare / 2;
}

/** Paints set lines inside marked content or an artifact that the caller has opened. */
export function paintLines(sheet: Sheet, lines: readonly Line[], at: Place, style: Style): void {
  lines.forEach((line, index) => {
    drawLine(sheet, line, at.x + shiftOf(line, at, style), at.y + index * style.leading, style);
  });
}

/** Draws set lines of an element at a fixed place on the present page; the caller has made sure that they fit. */
export function placeLines(
  sheet: Sheet,
  element: Element,
  lines: readonly Line[],
  at: Place,
  style: Style,
): void {
  sheet.mark(element, () => paintLines(sheet, lines, at, style));
}

/** Draws set lines from the sheet's place downwards and over as many pages as they need, never leaving one line alone. */
export function flowLines(
  sheet: Sheet,
  element: Element,
  lines: readonly Line[],
  column: Column,
  style: Style,
): void {
  let done = 0;
  while (done < lines.length) {
    const left = lines.length - done;
    const fits = Math.floor((sheet.bottom - sheet.y + 0.01) / style.leading);
    if (fits < Math.min(left, 2) && !sheet.isFresh) {
      sheet.newPage();
      continue;
    }
    const lonely = left - fits === 1 && fits > 2;
    const take = Math.max(1, Math.min(left, lonely ? fits - 1 : fits));
    placeLines(sheet, element, lines.slice(done, done + take), { ...column, y: sheet.y }, style);
    sheet.y += take * style.leading;
    done += take;
  }
}

export type TextOptions = { style?: Style; after?: number };

/** A paragraph, or a heading when its type says so. */
export function flowText(
  sheet: Sheet,
  parent: Element,
  type: 'P' | 'H1' | 'H2' | 'H3',
  content: Content,
  column: Column,
  options: TextOptions = {},
): void {
  const style = sheet.sized(options.style ?? styles.body);
  const lines = breakLines(content, style, column.width);
  sheet.element(parent, type, (element) => flowLines(sheet, element, lines, column, style));
  sheet.y += (options.after ?? 4) * sheet.scale;
}

export type ListMark = 'box' | 'dash' | 'number' | 'cross';

/** The drawn sign before an item of a list, inside an artifact that is already open. */
export function drawMark(sheet: Sheet, mark: ListMark, x: number, y: number, style: Style): void {
  const size = style.size * 0.78;
  const top = y + (style.leading - size) / 2;
  const { doc } = sheet;
  doc.lineWidth(0.9).strokeColor(ink.accent);
  if (mark === 'box') doc.rect(x + 0.5, top, size, size).stroke();
  if (mark === 'dash')
    doc
      .moveTo(x, top + size / 2)
      .lineTo(x + size * 0.8, top + size / 2)
      .stroke();
  if (mark !== 'cross') return;
  const arm = size * 0.72;
  doc
    .moveTo(x + 1, top + 1)
    .lineTo(x + arm, top + arm)
    .moveTo(x + arm, top + 1)
    .lineTo(x + 1, top + arm)
    .stroke();
}

/** A list: steps carry their number as text, the other marks are drawn and stay out of the reading. */
export function flowList(
  sheet: Sheet,
  parent: Element,
  items: readonly Content[],
  mark: ListMark,
  column: Column,
  options: TextOptions = {},
): void {
  if (items.length === 0) return;
  const style = sheet.sized(options.style ?? styles.body);
  const indent = style.size * (mark === 'number' && items.length > 9 ? 2 : 1.5);
  const inner = { x: column.x + indent, width: column.width - indent };
  sheet.element(parent, 'L', (list) => {
    items.forEach((item, index) => {
      const lines = breakLines(item, style, inner.width);
      sheet.room(Math.min(lines.length, 2) * style.leading);
      sheet.element(list, 'LI', (entry) => {
        if (mark === 'number') {
          const number = { ...style, face: 'strong', colour: ink.accent } as const;
          const label = breakLines(`${index + 1}. `, number, indent);
          sheet.element(entry, 'Lbl', (lbl) =>
            placeLines(sheet, lbl, label, { ...column, y: sheet.y }, number),
          );
        } else sheet.artifact(() => drawMark(sheet, mark, column.x, sheet.y, style));
        sheet.element(entry, 'LBody', (body) => flowLines(sheet, body, lines, inner, style));
      });
      sheet.y += 1.6 * sheet.scale;
    });
  });
  sheet.y += (options.after ?? 4) * sheet.scale;
}
