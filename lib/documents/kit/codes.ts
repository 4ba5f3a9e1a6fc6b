import JsBarcode from 'jsbarcode';
import encodeQr from 'qr';
import { ink } from '@/lib/documents/kit/ink';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';

// ISO/IEC 18004: four modules of quiet zone on every side.
export const quietZone = 4;

/** The modules of a QR code at recovery level M, true for dark, without its quiet zone. */
export function qrModules(text: string): boolean[][] {
  const framed = encodeQr(text, 'raw', { ecc: 'medium', border: 1 });
  return framed.slice(1, -1).map((row) => row.slice(1, -1));
}

/** The bars and gaps of a Code 128 symbol, one character a module, '1' for a bar, without its quiet zones. */
export function code128Modules(text: string): string {
  const target: { encodings?: readonly { data: string }[] } = {};
  // Without this callback the library throws a bare string.
  let isValid = true;
  const valid = (answer: boolean): void => {
    isValid = answer;
  };
  JsBarcode(target, text, { format: 'CODE128', valid });
  const modules = (target.encodings ?? []).map((part) => part.data).join('');
  if (!isValid || modules === '') throw new RangeError('a Code 128 symbol holds Latin characters only');
  return modules;
}

type Box = { x: number; y: number; size: number };

/** A QR code as one vector path on white, quiet zone inside its box. */
export function qrFigure(sheet: Sheet, parent: Element, text: string, alt: string, box: Box): void {
  const modules = qrModules(text);
  const unit = box.size / (modules.length + quietZone * 2);
  const bbox: [number, number, number, number] = [box.x, box.y, box.x + box.size, box.y + box.size];
  sheet.element(
    parent,
    'Figure',
    (figure) =>
      sheet.mark(figure, () => {
        sheet.doc.rect(box.x, box.y, box.size, box.size).fill(ink.white);
        modules.forEach((row, r) => {
          let c = 0;
          while (c < row.length) {
            let end = c;
            while (row[end]) end += 1;
            if (end > c)
              sheet.doc.rect(
                box.x + (c + quietZone) * unit,
                box.y + (r + quietZone) * unit,
                (end - c) * unit,
                unit,
              );
            c = end + 1;
          }
        });
        sheet.doc.fill(ink.code);
      }),
    { alt, bbox },
  );
}

/** A Code 128 symbol as one vector path, ten modules of quiet zone on either side inside its box (ISO/IEC 15417). */
export function barcodeFigure(
  sheet: Sheet,
  parent: Element,
  text: string,
  alt: string,
  box: { x: number; y: number; width: number; height: number },
): void {
  const modules = code128Modules(text);
  const unit = box.width / (modules.length + 20);
  const bbox: [number, number, number, number] = [box.x, box.y, box.x + box.width, box.y + box.height];
  sheet.element(
    parent,
    'Figure',
    (figure) =>
      sheet.mark(figure, () => {
        sheet.doc.rect(box.x, box.y, box.width, box.height).fill(ink.white);
        for (const bar of modules.matchAll(/1+/g)) {
          sheet.doc.rect(box.x + (bar.index + 10) * unit, box.y, bar[0].length * unit, box.height);
        }
        sheet.doc.fill(ink.code);
      }),
    { alt, bbox },
  );
}
