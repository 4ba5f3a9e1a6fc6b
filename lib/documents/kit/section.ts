import { type Column, heightOf, placeLines } from '@/lib/documents/kit/flow';
import { grid, ink, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines } from '@/lib/documents/kit/lines';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';

/** The wide column right of the stub, where running text stands. */
export function bodyColumn(sheet: Sheet): Column {
  const x = sheet.left + grid.stub + grid.gutter;
  return { x, width: sheet.left + sheet.width - x };
}

/** Both columns together, for tables that need them. */
export function fullColumn(sheet: Sheet): Column {
  return { x: sheet.left, width: sheet.width };
}

/** A hairline across the page. */
export function hairline(sheet: Sheet, y: number): void {
  sheet.artifact(() => {
    sheet.doc.lineWidth(0.6).strokeColor(ink.rule);
    sheet.doc
      .moveTo(sheet.left, y)
      .lineTo(sheet.left + sheet.width, y)
      .stroke();
  });
}

export type SectionOptions = {
  after?: number;
  level?: 'H2' | 'H3';
  /** Heading above, content over both columns. */
  wide?: boolean;
};

/**
 * A section with its heading in the stub's column and its content in the body's, under a hairline.
 * The heading is drawn on the page where the content begins.
 */
export function section(
  sheet: Sheet,
  heading: string,
  draw: (element: Element, column: Column) => void,
  options: SectionOptions = {},
): void {
  const style = sheet.sized(styled(styles.body, { face: 'strong' }));
  const pad = 5 * sheet.scale;
  const column = { x: sheet.left, width: options.wide ? sheet.width : grid.stub - 4 };
  const lines = breakLines(heading, style, column.width);
  sheet.room(pad * 2 + Math.max(heightOf(lines, style), style.leading * 3.5));
  sheet.element(sheet.root, 'Sect', (element) => {
    hairline(sheet, sheet.y);
    sheet.y += pad;
    const page = sheet.pages;
    const under = sheet.y + heightOf(lines, style);
    sheet.element(element, options.level ?? 'H2', (h) =>
      placeLines(sheet, h, lines, { ...column, y: sheet.y }, style),
    );
    if (options.wide) sheet.y = under + pad;
    draw(element, options.wide ? fullColumn(sheet) : bodyColumn(sheet));
    if (sheet.pages === page) sheet.y = Math.max(sheet.y, under);
  });
  sheet.y += (options.after ?? 3) * sheet.scale;
}
