import type { ListMark } from '@/lib/documents/kit/flow';
import { ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines, type Line } from '@/lib/documents/kit/lines';
import type { Sheet } from '@/lib/documents/kit/sheet';
import type { Content } from '@/lib/documents/kit/words';

export type ColumnBlock =
  | { kind: 'text'; content: Content; style?: Style }
  | { kind: 'list'; items: readonly Content[]; mark: ListMark };

export type ColumnSection = { heading: string; blocks: readonly ColumnBlock[] };

/** One line of a column, with where it may and may not be parted from the next. */
export type Row = {
  line: Line;
  style: Style;
  indent: number;
  /** Space above, left out at the head of a column. */
  gap: number;
  /** Space above that is always kept, with the section's rule over it. */
  pad: number;
  /** Never the last line of a column. */
  keep: boolean;
};

export type RowItem = { rows: Row[]; mark: { kind: ListMark; label: Line | null } | null };
export type RowBlock = { kind: 'text' | 'list'; items: RowItem[] };
export type RowSection = { heading: Row[]; blocks: RowBlock[] };

function rowsOf(lines: readonly Line[], style: Style, gap: number, indent = 0): Row[] {
  // Neither the first nor the last line of a paragraph stands alone in a column.
  return lines.map((line, index) => ({
    line,
    style,
    indent,
    gap: index === 0 ? gap : 0,
    pad: 0,
    keep: lines.length > 1 && (index === 0 || index === lines.length - 2),
  }));
}

function setBlock(sheet: Sheet, block: ColumnBlock, width: number): RowBlock {
  const style = sheet.sized(block.kind === 'text' ? (block.style ?? styles.body) : styles.body);
  if (block.kind === 'text') {
    const rows = rowsOf(breakLines(block.content, style, width), style, 2 * sheet.scale);
    return { kind: 'text', items: [{ rows, mark: null }] };
  }
  const { items, mark } = block;
  const indent = style.size * (mark === 'number' && items.length > 9 ? 2 : 1.5);
  const labelStyle = styled(style, { face: 'strong', colour: ink.accent });
  return {
    kind: 'list',
    items: items.map((item, index) => {
      const lines = breakLines(item, style, width - indent);
      const label = mark === 'number' ? breakLines(`${index + 1}. `, labelStyle, indent)[0] : null;
      return {
        rows: rowsOf(lines, style, 1.6 * sheet.scale, indent),
        mark: { kind: mark, label: label ?? null },
      };
    }),
  };
}

/** Sets sections in lines for a column of this width. */
export function setSections(sheet: Sheet, sections: readonly ColumnSection[], width: number): RowSection[] {
  const headStyle = sheet.sized(styled(styles.body, { face: 'strong' }));
  return sections.map((section) => {
    const lines = breakLines(section.heading, headStyle, width);
    const heading = rowsOf(lines, headStyle, 6 * sheet.scale).map((row, index) => ({
      ...row,
      pad: index === 0 ? 4 * sheet.scale : 0,
      keep: true,
    }));
    return { heading, blocks: section.blocks.map((block) => setBlock(sheet, block, width)) };
  });
}
