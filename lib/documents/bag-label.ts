import { wordsLocale } from '@/lib/calendar/language';
import { barcodeFigure, qrFigure } from '@/lib/documents/kit/codes';
import { fitted, limitedLines } from '@/lib/documents/kit/fit';
import { heightOf, placeLines } from '@/lib/documents/kit/flow';
import { ink, mm, styled, styles } from '@/lib/documents/kit/ink';
import { breakLines } from '@/lib/documents/kit/lines';
import { paintPerforation } from '@/lib/documents/kit/marks';
import { type Element, type Paper, Sheet } from '@/lib/documents/kit/sheet';
import { showNumber } from '@/lib/numbers/job-number';

export type BagLabelData = {
  /** Stored job number, without separators; the bars hold it as it is. */
  job: string;
  /** What the QR code holds: the address of the job in the workshop, or the number. */
  code: string;
  model: string;
  serial: string;
};

export type LabelSetting = { workshop: string; locale: string; made: Date };

const width = mm(62);
const height = mm(29);
const edge = mm(2);
const codeSide = mm(21);

type Corner = { x: number; y: number };

/** One label with its left top corner at a place: QR, number, model, serial, bars over the foot. */
function drawLabel(sheet: Sheet, parent: Element, label: BagLabelData, at: Corner): void {
  const number = showNumber(label.job);
  const right = { x: at.x + edge + codeSide + mm(1), width: width - edge * 2 - codeSide - mm(1) };
  sheet.element(parent, 'Sect', (part) => {
    const big = fitted(number, styled(styles.number, { size: 17, leading: 17 }), right.width, 0.5);
    const top = at.y + edge - 1;
    const lines = breakLines(number, big, right.width);
    sheet.element(part, 'H1', (h1) => placeLines(sheet, h1, lines, { ...right, y: top }, big));
    // The unit is a help, not the key: two lines each are enough to tell two bags apart.
    const modelStyle = styled(styles.small, { size: 7, leading: 8.2, colour: ink.text });
    const serialStyle = styled(modelStyle, { face: 'mono', size: 6.6 });
    const model = limitedLines(label.model, modelStyle, right.width, 2);
    const serial = limitedLines(label.serial, serialStyle, right.width, 2);
    let y = top + 18;
    sheet.element(part, 'P', (p) => placeLines(sheet, p, model, { ...right, y }, modelStyle));
    y += heightOf(model, modelStyle);
    sheet.element(part, 'P', (p) => placeLines(sheet, p, serial, { ...right, y }, serialStyle));
    const codeAt = { x: at.x + edge - 2, y: at.y + edge - 2, size: codeSide };
    qrFigure(sheet, part, label.code, `QR code of job ${number}`, codeAt);
    const bars = {
      x: at.x + edge - 2,
      y: at.y + height - edge - mm(5),
      width: width - edge * 2 + 4,
      height: mm(5),
    };
    barcodeFigure(sheet, part, label.job, `Code 128 bar code of job number ${number}`, bars);
  });
}

function openLabels(size: Paper | readonly [number, number], title: string, setting: LabelSetting): Sheet {
  const { workshop, locale, made } = setting;
  return new Sheet({ size, title, author: workshop, lang: wordsLocale(locale), made, margin: 0 });
}

/** A label of 62 x 29 mm for the bag or box a unit waits in, the page being the label. */
export function drawBagLabel(label: BagLabelData, setting: LabelSetting): Promise<Uint8Array> {
  const sheet = openLabels([width, height], `Label ${showNumber(label.job)}`, setting);
  drawLabel(sheet, sheet.root, label, { x: 0, y: 0 });
  return sheet.finish();
}

const columns = 3;
const rows = 9;

/** How many labels one A4 sheet holds. */
export const labelsPerSheet = columns * rows;

/**
 * Labels on A4 in three columns of nine, with dots to cut along. `firstPlace` leaves places free that an earlier print
 * has used: 0 is the left top one. Refuses an empty list and a place that the sheet does not have.
 */
export function drawBagLabelSheet(
  labels: readonly BagLabelData[],
  setting: LabelSetting,
  firstPlace = 0,
): Promise<Uint8Array> {
  if (labels.length === 0) throw new RangeError('A sheet of labels needs at least one label');
  if (!Number.isInteger(firstPlace) || firstPlace < 0 || firstPlace >= labelsPerSheet)
    throw new RangeError(`A sheet has places 0 to ${labelsPerSheet - 1}, not ${firstPlace}`);
  const sheet = openLabels('A4', 'Labels', setting);
  const left = (sheet.width - width * columns) / 2;
  const top = (sheet.bottom - height * rows) / 2;
  labels.forEach((label, index) => {
    const place = (index + firstPlace) % labelsPerSheet;
    if (place === 0 && index > 0) sheet.newPage();
    const at = { x: left + (place % columns) * width, y: top + Math.floor(place / columns) * height };
    sheet.artifact(() => paintCut(sheet, at));
    drawLabel(sheet, sheet.root, label, at);
  });
  return sheet.finish();
}

function paintCut(sheet: Sheet, at: Corner): void {
  const right = at.x + width;
  const below = at.y + height;
  paintPerforation(sheet, { x1: at.x, y1: at.y, x2: right, y2: at.y });
  paintPerforation(sheet, { x1: at.x, y1: below, x2: right, y2: below });
  paintPerforation(sheet, { x1: at.x, y1: at.y, x2: at.x, y2: below });
  paintPerforation(sheet, { x1: right, y1: at.y, x2: right, y2: below });
}
