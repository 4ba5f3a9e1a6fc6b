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
  const lead = breakLines(text.before, set, column.width);
  const label = breakLines(text.label, strong, column.width);
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
        const area = { x: column.x, y, width: line.width, height: strong.leading };
        sheet.link(link, area, text.url, text.description);
      });
    });
    sheet.y += heightOf(label, set) + 4 * sheet.scale;
  });
}
