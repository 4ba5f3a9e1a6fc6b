import {
  type ColumnSection,
  type Row,
  type RowItem,
  type RowSection,
  setSections,
} from '@/lib/documents/kit/column-rows';
import { drawMark } from '@/lib/documents/kit/flow';
import { ink, styled } from '@/lib/documents/kit/ink';
import { drawLine } from '@/lib/documents/kit/lines';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';

type Spot = { page: number; x: number; y: number };

const between = 18;

function heightOf(row: Row, isFirst: boolean): number {
  return (isFirst ? 0 : row.gap) + row.pad + row.style.leading;
}

/** Rows that stay together, as runs that a column takes whole. */
function runsOf(rows: readonly Row[]): Row[][] {
  const runs: Row[][] = [];
  let joins = false;
  for (const row of rows) {
    if (joins) runs.at(-1)?.push(row);
    else runs.push([row]);
    joins = row.keep;
  }
  return runs;
}

/** Fills columns of a height one after the other; a run that is taller than a column stands alone in one. */
function fill(runs: readonly Row[][], height: (column: number) => number): Row[][] {
  const columns: Row[][] = [[]];
  let used = 0;
  for (const run of runs) {
    const tall = run.reduce((sum, row, index) => sum + heightOf(row, used === 0 && index === 0), 0);
    if (used > 0 && used + tall > height(columns.length - 1)) {
      columns.push([]);
      used = 0;
    }
    columns.at(-1)?.push(...run);
    used += run.reduce((sum, row, index) => sum + heightOf(row, used === 0 && index === 0), 0);
  }
  return columns;
}

function fitsWhole(sections: readonly Row[][], height: number): boolean {
  return pair(sections, height) !== null;
}

function isWithin(column: readonly Row[], height: number): boolean {
  return column.reduce((sum, row, index) => sum + heightOf(row, index === 0), 0) <= height;
}

/** Two columns of at most this height, or null where the runs need more. */
function pair(runs: readonly Row[][], height: number): Row[][] | null {
  const columns = fill(runs, () => height);
  return columns.length <= 2 && columns.every((column) => isWithin(column, height)) ? columns : null;
}

/** Columns as low as they can be with no more than two of them. */
function even(runs: readonly Row[][], most: number): Row[][] {
  for (let limit = 20; limit < most; limit += 3) {
    const columns = pair(runs, limit);
    if (columns) return columns;
  }
  return fill(runs, () => most);
}

/**
 * The columns of each page: full ones first, the last page's two as even as the text allows. Where whole sections fit
 * side by side they are kept whole; a list broken over two columns is harder to follow than an uneven foot.
 */
function balanced(sections: readonly Row[][], first: number, later: number): Row[][] {
  if (fitsWhole(sections, first)) return even(sections, first);
  const full = fill(sections.flatMap(runsOf), (column) => (column < 2 ? first : later));
  const before = full.length - (full.length % 2 === 0 ? 2 : 1);
  const last = even(runsOf(full.slice(before).flat()), before === 0 ? first : later);
  return [...full.slice(0, before), ...last];
}

function place(
  sheet: Sheet,
  columns: readonly Row[][],
  width: number,
): { spots: Map<Row, Spot>; end: number } {
  const spots = new Map<Row, Spot>();
  const start = sheet.y;
  let end = start;
  columns.forEach((rows, index) => {
    const page = sheet.pages + Math.floor(index / 2);
    let y = page === sheet.pages ? start : sheet.freshTop;
    if (index % 2 === 0) end = y;
    rows.forEach((row, at) => {
      const top = y + (at === 0 ? 0 : row.gap);
      spots.set(row, { page, x: sheet.left + (index % 2) * (width + between), y: top });
      y = top + row.pad + row.style.leading;
    });
    end = Math.max(end, y);
  });
  return { spots, end };
}

class ColumnDrawing {
  constructor(
    private readonly sheet: Sheet,
    private readonly spots: ReadonlyMap<Row, Spot>,
    private readonly width: number,
  ) {}

  section(section: RowSection): void {
    const { sheet } = this;
    sheet.element(sheet.root, 'Sect', (part) => {
      this.rule(section.heading[0]);
      sheet.element(part, 'H2', (h) => this.rows(h, section.heading));
      for (const block of section.blocks) {
        if (block.kind === 'list')
          sheet.element(part, 'L', (list) => block.items.forEach((item) => void this.item(list, item)));
        else for (const item of block.items) sheet.element(part, 'P', (p) => this.rows(p, item.rows));
      }
    });
  }

  private at(row: Row): Spot {
    const spot = this.spots.get(row);
    if (!spot) throw new Error('a line of a column has no place');
    while (this.sheet.pages < spot.page) this.sheet.newPage();
    return spot;
  }

  private rows(element: Element, rows: readonly Row[]): void {
    for (const row of rows) {
      const { x, y } = this.at(row);
      this.sheet.mark(element, () => drawLine(this.sheet, row.line, x + row.indent, y + row.pad, row.style));
    }
  }

  private rule(row: Row | undefined): void {
    if (!row) return;
    const { x, y } = this.at(row);
    this.sheet.artifact(() => {
      this.sheet.doc.lineWidth(0.6).strokeColor(ink.rule);
      this.sheet.doc
        .moveTo(x, y)
        .lineTo(x + this.width, y)
        .stroke();
    });
  }

  private item(list: Element, item: RowItem): void {
    const { sheet } = this;
    const { mark } = item;
    const first = item.rows[0];
    sheet.element(list, 'LI', (entry) => {
      if (first && mark) {
        const { x, y } = this.at(first);
        const { label } = mark;
        const style = styled(first.style, { face: 'strong', colour: ink.accent });
        if (label)
          sheet.element(entry, 'Lbl', (lbl) => sheet.mark(lbl, () => drawLine(sheet, label, x, y, style)));
        else sheet.artifact(() => drawMark(sheet, mark.kind, x, y, first.style));
      }
      sheet.element(entry, 'LBody', (body) => this.rows(body, item.rows));
    });
  }
}

/**
 * Sections in two columns below the sheet's place, read down the left one first. On the last page the columns are made
 * even; what does not fit goes on over further pages. Sections with nothing in them are left
 * out. Says whether every section stayed in one piece.
 */
export function flowColumns(sheet: Sheet, sections: readonly ColumnSection[]): boolean {
  const width = (sheet.width - between) / 2;
  const told = sections.filter(({ blocks }) =>
    blocks.some((block) => block.kind === 'text' || block.items.length > 0),
  );
  const set = setSections(sheet, told, width);
  if (set.length === 0) return true;
  const rows = set.map((section) => [
    ...section.heading,
    ...section.blocks.flatMap((block) => block.items.flatMap((item) => item.rows)),
  ]);
  sheet.room(60);
  const room = sheet.bottom - sheet.y;
  const columns = balanced(rows, room, sheet.bottom - sheet.freshTop);
  const { spots, end } = place(sheet, columns, width);
  const drawing = new ColumnDrawing(sheet, spots, width);
  for (const section of set) drawing.section(section);
  sheet.y = end + 6 * sheet.scale;
  return fitsWhole(rows, room);
}
