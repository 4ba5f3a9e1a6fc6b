import { type Column, type Place, paintLines } from '@/lib/documents/kit/flow';
import type { Face } from '@/lib/documents/kit/fonts';
import { ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines, type Line } from '@/lib/documents/kit/lines';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import type { Content } from '@/lib/documents/kit/words';

export type TableColumn = {
  head: string;
  /** Share of the table's width, in any unit. */
  share: number;
  align?: 'left' | 'right';
  face?: Face;
};

export type TableRow = { cells: readonly Content[]; total?: boolean };

type SetCell = { lines: Line[]; style: Style; place: Omit<Place, 'y'> };

const gap = 12;

function placesOf(columns: readonly TableColumn[], at: Column): Omit<Place, 'y'>[] {
  const whole = columns.reduce((sum, column) => sum + column.share, 0);
  const usable = at.width - gap * (columns.length - 1);
  let x = at.x;
  return columns.map((column) => {
    const place = { x, width: (usable * column.share) / whole, align: column.align ?? 'left' };
    x += place.width + gap;
    return place;
  });
}

function strong(face: Face): Face {
  return face === 'mono' || face === 'mono-strong' ? 'mono-strong' : 'strong';
}

/** A table being drawn: heads once in the tree and again, as an artifact, on each further page. */
class Table {
  private readonly places: Omit<Place, 'y'>[];
  private readonly heads: SetCell[];
  private readonly headStyle: Style;
  private readonly pad: number;

  constructor(
    private readonly sheet: Sheet,
    private readonly columns: readonly TableColumn[],
    private readonly at: Column,
    private readonly style: Style,
  ) {
    this.pad = 3 * sheet.scale;
    this.places = placesOf(columns, at);
    this.headStyle = sheet.sized(styled(styles.small, { face: 'strong' }));
    this.heads = this.set(
      columns.map((column) => column.head),
      () => this.headStyle,
    );
  }

  draw(parent: Element, rows: readonly TableRow[]): void {
    const set = rows.map((row) => this.setRow(row));
    const first = set[0];
    // A first row taller than this is better begun here than pushed over leaf.
    const together = this.headHeight + (first ? this.heightOf(first) : 0);
    this.sheet.room(Math.min(together, (this.sheet.bottom - this.sheet.top) * 0.4));
    this.sheet.element(parent, 'Table', (element) => {
      this.drawHeads(element);
      for (const row of set) this.drawRow(element, row);
    });
  }

  private set(cells: readonly Content[], styleAt: (column: number) => Style): SetCell[] {
    return this.places.map((place, index) => {
      const style = styleAt(index);
      return { lines: breakLines(cells[index] ?? '', style, place.width), style, place };
    });
  }

  private setRow(row: TableRow): SetCell[] {
    return this.set(row.cells, (index) => {
      const face = this.columns[index]?.face ?? this.style.face;
      return styled(this.style, { face: row.total ? strong(face) : face });
    });
  }

  private linesIn(cells: readonly SetCell[]): number {
    return Math.max(1, ...cells.map((cell) => cell.lines.length));
  }

  private heightOf(cells: readonly SetCell[]): number {
    return this.linesIn(cells) * this.style.leading + this.pad * 2;
  }

  private get headHeight(): number {
    return this.linesIn(this.heads) * this.headStyle.leading + this.pad;
  }

  private rule(weight: number): void {
    const { sheet, at } = this;
    sheet.artifact(() => {
      sheet.doc.lineWidth(weight).strokeColor(weight > 0.6 ? ink.text : ink.rule);
      sheet.doc
        .moveTo(at.x, sheet.y)
        .lineTo(at.x + at.width, sheet.y)
        .stroke();
    });
  }

  private paint(cell: SetCell, from: number, take: number): void {
    paintLines(
      this.sheet,
      cell.lines.slice(from, from + take),
      { ...cell.place, y: this.sheet.y },
      cell.style,
    );
  }

  private drawHeads(table: Element | null): void {
    const { sheet, heads } = this;
    if (table) {
      const kinds = heads.map(() => ({ type: 'TH', options: { scope: 'Column' } as const }));
      sheet.element(table, 'TR', (row) => {
        sheet.siblings(row, kinds, (cells) => {
          cells.forEach((element, index) => {
            const head = heads[index];
            if (head) sheet.mark(element, () => this.paint(head, 0, head.lines.length));
          });
        });
      });
    } else {
      sheet.artifact(() => {
        for (const head of heads) this.paint(head, 0, head.lines.length);
      }, 'Pagination');
    }
    sheet.y += this.headHeight;
    this.rule(0.9);
  }

  private turn(): void {
    this.sheet.newPage();
    this.drawHeads(null);
  }

  /** A row moves to the next page whole where it can; one taller than that goes on over the pages, as one row of the tree. */
  private drawRow(table: Element, row: readonly SetCell[]): void {
    const { sheet, pad } = this;
    const { leading } = this.style;
    const total = this.linesIn(row);
    const height = this.heightOf(row);
    if (sheet.y + height > sheet.bottom + 0.01 && height < (sheet.bottom - sheet.top) * 0.6) this.turn();
    const kinds = row.map((_, index) =>
      index === 0 ? { type: 'TH', options: { scope: 'Row' } as const } : { type: 'TD' },
    );
    sheet.element(table, 'TR', (tr) => {
      sheet.siblings(tr, kinds, (cells) => {
        let done = 0;
        while (done < total) {
          const fits = Math.floor((sheet.bottom - sheet.y - pad * 2 + 0.01) / leading);
          if (fits < 1) {
            this.turn();
            continue;
          }
          const take = Math.min(fits, total - done);
          sheet.y += pad;
          cells.forEach((element, index) => {
            const cell = row[index];
            if (cell && cell.lines.length > done) sheet.mark(element, () => this.paint(cell, done, take));
          });
          sheet.y += take * leading + pad;
          done += take;
          if (done < total) this.turn();
        }
      });
    });
    this.rule(0.5);
  }
}

/**
 * A table whose columns and rows are headed (TH with scope), drawn from the sheet's place downwards. Rows move to the
 * next page whole where they can, and the heading row is shown again there.
 */
export function table(
  sheet: Sheet,
  parent: Element,
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  at: Column,
  options: { style?: Style; after?: number } = {},
): void {
  new Table(sheet, columns, at, sheet.sized(options.style ?? styles.body)).draw(parent, rows);
  sheet.y += (options.after ?? 6) * sheet.scale;
}
