import { qrFigure } from '@/lib/documents/kit/codes';
import { fitted, shortened } from '@/lib/documents/kit/fit';
import { heightOf, placeLines } from '@/lib/documents/kit/flow';
import type { Face } from '@/lib/documents/kit/fonts';
import { grid, ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines, type Line } from '@/lib/documents/kit/lines';
import { paintDocketFrame } from '@/lib/documents/kit/marks';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import type { Content } from '@/lib/documents/kit/words';

export type Fact = { name: string; value: string; face?: Face };

export type Docket = {
  /** Word for what this docket is: 'Job', 'Quote', 'Certificate'. */
  kind: string;
  /** Number as shown to people, with its hyphens. */
  number: string;
  code: { text: string; alt: string; caption: string; size?: number } | null;
  title: string;
  /** A line under the title that stands out, such as what a claim job costs. */
  notice: string | null;
  facts: readonly Fact[];
};

type Block = { lines: Line[]; style: Style };

const pad = 11;
const nameShare = 0.22;
// 31 mm: a phone reads the short addresses of a job or quote from it at arm's length.
const codeSide = 88;

function block(content: Content, style: Style, width: number): Block {
  return { lines: breakLines(content, style, width), style };
}

function tall(part: Block): number {
  return heightOf(part.lines, part.style);
}

/** The facts as a table without lines, each headed by its name. */
function placeFacts(
  sheet: Sheet,
  parent: Element,
  facts: readonly { name: Block; value: Block }[],
  x: number,
  y: number,
  width: number,
): void {
  const name = width * nameShare;
  let at = y;
  sheet.element(parent, 'Table', (table) => {
    for (const fact of facts) {
      sheet.element(table, 'TR', (row) => {
        sheet.element(
          row,
          'TH',
          (th) => placeLines(sheet, th, fact.name.lines, { x, width: name - 6, y: at + 1 }, fact.name.style),
          { scope: 'Row' },
        );
        sheet.element(row, 'TD', (td) =>
          placeLines(
            sheet,
            td,
            fact.value.lines,
            { x: x + name, width: width - name, y: at },
            fact.value.style,
          ),
        );
      });
      at += Math.max(tall(fact.name), tall(fact.value)) + 2;
    }
  });
}

/**
 * The docket that opens every document: on the stub its kind, number and code, on the body its title and facts,
 * a perforation between them. As tall as its longer side, and always whole on one page.
 */
export function docket(sheet: Sheet, given: Docket): void {
  const stubInner = grid.stub - pad * 2;
  const bodyX = sheet.left + grid.stub + grid.gutter;
  const bodyWidth = sheet.left + sheet.width - pad - bodyX;
  const kind = block(given.kind, styled(styles.lead, { colour: ink.accent }), stubInner);
  const number = block(given.number, fitted(given.number, styles.number, stubInner), stubInner);
  const caption = given.code ? block(given.code.caption, styles.small, stubInner) : null;
  const title = block(shortened(given.title, 120), styles.title, bodyWidth);
  const notice = given.notice
    ? block(shortened(given.notice, 240), styled(styles.lead, { colour: ink.accent }), bodyWidth)
    : null;
  // A docket stands on one page whatever is typed: its values share some 2000 characters, 550 points of lines at most.
  const most = Math.max(160, Math.floor(2000 / Math.max(1, given.facts.length)));
  const nameStyle = styled(styles.small, { leading: 11.5 });
  const facts = given.facts.map((fact) => ({
    name: block(fact.name, nameStyle, bodyWidth * nameShare - 6),
    value: block(
      shortened(fact.value, most),
      styled(styles.body, fact.face ? { face: fact.face } : {}),
      bodyWidth * (1 - nameShare),
    ),
  }));

  const codeSize = given.code ? Math.min(stubInner, given.code.size ?? codeSide) : 0;
  const stubHeight = tall(kind) + tall(number) + (caption ? 6 + codeSize + 4 + tall(caption) : 0);
  const factsHeight = facts.reduce((sum, fact) => sum + Math.max(tall(fact.name), tall(fact.value)) + 2, 0);
  const bodyHeight = tall(title) + (notice ? tall(notice) + 3 : 0) + 6 + factsHeight;
  const height = Math.max(stubHeight, bodyHeight) + pad * 2;
  sheet.room(height);
  const top = sheet.y;
  sheet.artifact(() =>
    paintDocketFrame(sheet, { x: sheet.left, y: top, width: sheet.width, height }, grid.stub),
  );

  sheet.element(sheet.root, 'Sect', (part) => {
    let y = top + pad - 3;
    sheet.element(part, 'H1', (h1) =>
      placeLines(sheet, h1, title.lines, { x: bodyX, width: bodyWidth, y }, title.style),
    );
    const stubX = sheet.left + pad;
    let stubY = top + pad - 2;
    sheet.element(part, 'P', (p) => {
      placeLines(sheet, p, kind.lines, { x: stubX, width: stubInner, y: stubY }, kind.style);
      stubY += tall(kind);
      placeLines(sheet, p, number.lines, { x: stubX, width: stubInner, y: stubY }, number.style);
      stubY += tall(number) + 6;
    });
    y += tall(title) + 6;
    if (notice) {
      sheet.element(part, 'P', (p) =>
        placeLines(sheet, p, notice.lines, { x: bodyX, width: bodyWidth, y: y - 3 }, notice.style),
      );
      y += tall(notice) + 3;
    }
    if (facts.length > 0) placeFacts(sheet, part, facts, bodyX, y, bodyWidth);
    if (!given.code || !caption) return;
    qrFigure(sheet, part, given.code.text, given.code.alt, { x: stubX, y: stubY, size: codeSize });
    sheet.element(part, 'Caption', (c) =>
      placeLines(
        sheet,
        c,
        caption.lines,
        { x: stubX, width: stubInner, y: stubY + codeSize + 4 },
        caption.style,
      ),
    );
  });
  sheet.y = top + height + 10 * sheet.scale;
}
