import { type Column, heightOf, placeLines } from '@/lib/documents/kit/flow';
import { ink, type Style, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines } from '@/lib/documents/kit/lines';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';

export type LinkText = { before: string; label: string; url: string; description: string };

/** A paragraph that ends in a link; the link has a rectangle on each of its lines and says in words where it leads. */
export function flowLink(
  sheet: Sheet,
  parent: Element,
  text: LinkText,
  column: Column,
  style: Style = styles.body,
): void {
  const set = sheet.sized(style);
  const strong = styled(set, { face: 'strong', colour: ink.accent });
  const lead = breakLines(sheet, text.before, set, column.width);
  const label = breakLines(sheet, text.label, strong, column.width);
  sheet.room(heightOf([...lead, ...label], set));
  sheet.element(parent, 'P', (p) => {
    if (text.before !== '') {
      placeLines(sheet, p, lead, { ...column, y: sheet.y }, set);
      sheet.y += heightOf(lead, set);
    }
    sheet.element(p, 'Link', (link) => {
      placeLines(sheet, link, label, { ...column, y: sheet.y }, strong);
      label.forEach((line, index) => {
        const y = sheet.y + index * strong.leading;
        // PDFKit gives a tagged link an empty description unless one is handed to it as a String object.
        const described = { structParent: link.node, Contents: new String(text.description) };
        sheet.doc.link(column.x, y, line.width, strong.leading, text.url, described);
      });
    });
    sheet.y += heightOf(label, set) + 4 * sheet.scale;
  });
}
