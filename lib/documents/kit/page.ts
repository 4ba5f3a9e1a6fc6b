import { wordsLocale } from '@/lib/calendar/language';
import { fitted, limitedLines } from '@/lib/documents/kit/fit';
import { paintLines, placeLines } from '@/lib/documents/kit/flow';
import { grid, ink, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines } from '@/lib/documents/kit/lines';
import { paintDocketFrame } from '@/lib/documents/kit/marks';
import { type Paper, Sheet } from '@/lib/documents/kit/sheet';

/** The workshop as it signs its papers. */
export type Workshop = {
  name: string;
  address: readonly string[];
  phone: string | null;
  email: string | null;
};

/** What every document is told besides its own facts. */
export type Setting = {
  paper: Paper;
  /** BCP 47: how amounts are written, and days where it is an English one; the text is English. */
  locale: string;
  /** The moment that stands in the file as its making; the same facts and moment give the same bytes. */
  made: Date;
};

/** One drawing of a document: how large its running text is set, and whether it is only to see what fits. */
export type Pass = { scale: number; isTrial: boolean };

export type PageFacts = { title: string; kind: string; number: string; workshop: Workshop };

const footHeight = 16;
const stripHeight = 26;

/** A sheet with the workshop's letterhead on it, and on every further page a small docket strip with the number. */
export function openPage(
  setting: Setting,
  facts: PageFacts,
  pass: Pass = { scale: 1, isTrial: false },
): Sheet {
  const sheet = new Sheet({
    size: setting.paper,
    title: facts.title,
    author: facts.workshop.name,
    lang: wordsLocale(setting.locale),
    made: setting.made,
    foot: footHeight,
    head: stripHeight + 12,
    ...pass,
  });
  letterhead(sheet, facts.workshop);
  sheet.atNewPage = () => strip(sheet, facts);
  return sheet;
}

function letterhead(sheet: Sheet, workshop: Workshop): void {
  const left = grid.stub + 40;
  const name = breakLines(workshop.name, styles.lead, left - grid.gutter);
  const contact = [workshop.phone, workshop.email].filter((part) => part !== null).join('  ·  ');
  const lines = [workshop.address.join(', '), contact].filter((text) => text !== '').join('\n');
  const address = breakLines(lines, styles.small, sheet.width - left);
  const y = sheet.y;
  sheet.element(sheet.root, 'P', (p) =>
    placeLines(sheet, p, name, { x: sheet.left, width: left, y: y + 2 }, styles.lead),
  );
  if (lines !== '') {
    const at = { x: sheet.left + left, width: sheet.width - left, y, align: 'right' } as const;
    sheet.element(sheet.root, 'P', (p) => placeLines(sheet, p, address, at, styles.small));
  }
  sheet.y = y + Math.max(name.length * styles.lead.leading + 2, address.length * styles.small.leading) + 8;
}

function strip(sheet: Sheet, facts: PageFacts): void {
  const height = stripHeight;
  const top = sheet.y;
  const number = fitted(facts.number, styled(styles.number, { size: 11.5, leading: height }), grid.stub - 20);
  const title = styled(styles.small, { leading: height });
  const wide = sheet.width - grid.stub - grid.gutter - 10;
  const text = fitted(`${facts.kind}, continued`, title, wide);
  sheet.artifact(() => {
    paintDocketFrame(sheet, { x: sheet.left, y: top, width: sheet.width, height }, grid.stub);
    paintLines(
      sheet,
      breakLines(facts.number, number, grid.stub),
      { x: sheet.left + 11, width: grid.stub, y: top },
      number,
    );
    const at = { x: sheet.left + grid.stub + grid.gutter, width: wide, y: top };
    paintLines(sheet, breakLines(`${facts.kind}, continued`, text, wide), at, text);
  }, 'Pagination');
}

/** Adds the foot of every page and closes the file. */
export function closePage(sheet: Sheet, facts: PageFacts): Promise<Uint8Array> {
  sheet.eachPage((page, pages) => {
    const y = sheet.bottom + footHeight - styles.small.leading;
    const place = { x: sheet.left, width: sheet.width, y };
    sheet.artifact(() => {
      const name = limitedLines(facts.workshop.name, styles.small, grid.stub, 1);
      paintLines(sheet, name, place, styles.small);
      const number = breakLines(`${facts.kind} ${facts.number}`, styles.small, sheet.width / 2);
      paintLines(
        sheet,
        number.slice(0, 1),
        { ...place, x: sheet.left + grid.stub + grid.gutter },
        styles.small,
      );
      const right = breakLines(`Page ${page} of ${pages}`, styles.small, 90);
      paintLines(sheet, right, { ...place, align: 'right' }, styles.small);
      sheet.doc.lineWidth(0.6).strokeColor(ink.rule);
      sheet.doc
        .moveTo(sheet.left, y - 3)
        .lineTo(sheet.left + sheet.width, y - 3)
        .stroke();
    }, 'Pagination');
  });
  return sheet.finish();
}

/** Whether a document stands on the pages it is meant for: all of it, the part that matters most, or neither. */
export type Fit = 'whole' | 'partly' | 'no';

const scales = [1, 0.95, 0.9, 0.86];

/**
 * Draws at the largest size at which the document fits as a whole, or else in part; where it never does, at full size
 * over more pages. Text is never set below 0.86 of its size, 8.3 points. Each size is tried without drawing.
 */
export function drawLargest(
  draw: (pass: Pass) => { fit: Fit; close: () => Promise<Uint8Array> },
): Promise<Uint8Array> {
  let partly: number | null = null;
  for (const scale of scales) {
    const { fit } = draw({ scale, isTrial: true });
    if (fit === 'whole') return draw({ scale, isTrial: false }).close();
    if (fit === 'partly') partly ??= scale;
  }
  return draw({ scale: partly ?? 1, isTrial: false }).close();
}
