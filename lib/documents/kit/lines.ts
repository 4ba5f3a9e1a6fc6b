import type { Face } from '@/lib/documents/kit/fonts';
import type { Colour, Style } from '@/lib/documents/kit/ink';
import { type Run, runsOf, tidy, writtenCharacters } from '@/lib/documents/kit/runs';
import type { Sheet } from '@/lib/documents/kit/sheet';

/** Part of a paragraph set in another face or colour. */
export type Span = { text: string; face?: Face; colour?: Colour };
export type Content = string | readonly Span[];

export type Piece = Run & { colour: Colour; width: number };
/** `actual` is what the whole line stands for when it shows only part of its text. */
export type Line = { pieces: Piece[]; width: number; actual?: string };

type Atom = { text: string; face: Face; colour: Colour };

// Widths in thousandths of the size, the same for every document: a page is often set at several sizes before it fits.
const unitWidths = new Map<string, number>();
const mostKept = 20_000;

function widthOf(sheet: Sheet, run: Run, size: number): number {
  const key = `${run.font} ${run.text}`;
  const known = unitWidths.get(key);
  if (known !== undefined) return known * size;
  const unit = sheet.doc.font(run.font, 1000).widthOfString(run.text) / 1000;
  if (unitWidths.size >= mostKept) unitWidths.clear();
  // Words come again and again, long strings of letters do not.
  if (run.text.length <= 40) unitWidths.set(key, unit);
  return unit * size;
}

function measure(sheet: Sheet, atom: Atom, size: number): Piece[] {
  return runsOf(atom.text, atom.face).map((run) => ({
    ...run,
    colour: atom.colour,
    width: widthOf(sheet, run, size),
  }));
}

// A space between digits parts no line: telephone numbers and amounts stay readable as one.
const wordPattern = /(?:[^ ]|(?<=\d) (?=\d))+ *| +/g;

function widthOfAll(pieces: readonly Piece[]): number {
  return pieces.reduce((sum, piece) => sum + piece.width, 0);
}

/** Words with the spaces after them; what two spans share without a space between stays one word. */
function wordsOf(spans: readonly Atom[]): Atom[][] {
  const words: Atom[][] = [];
  let open: Atom[] | null = null;
  for (const span of spans) {
    for (const text of span.text.match(wordPattern) ?? []) {
      if (!open) {
        open = [];
        words.push(open);
      }
      open.push({ ...span, text });
      if (text.endsWith(' ')) open = null;
    }
  }
  return words;
}

function add(line: Line, pieces: readonly Piece[]): void {
  for (const piece of pieces) {
    const last = line.pieces.at(-1);
    const joins = last && last.font === piece.font && last.colour === piece.colour;
    if (joins && last.actual === undefined && piece.actual === undefined) {
      last.text += piece.text;
      last.width += piece.width;
    } else line.pieces.push({ ...piece });
    line.width += piece.width;
  }
}

function trimmedWidth(sheet: Sheet, word: readonly Atom[], size: number): number {
  const bare = word.map((atom, index) =>
    index === word.length - 1 ? { ...atom, text: atom.text.trimEnd() } : atom,
  );
  return widthOfAll(bare.flatMap((atom) => measure(sheet, atom, size)));
}

/** How many of these characters, at most 512, fit into a width; measured together, since kerning can widen a pair. */
function fitting(
  sheet: Sheet,
  atom: Atom,
  characters: readonly string[],
  size: number,
  width: number,
): number {
  let fits = 0;
  let tooMany = Math.min(characters.length, 512) + 1;
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    const text = characters.slice(0, middle).join('').trimEnd();
    if (widthOfAll(measure(sheet, { ...atom, text }, size)) <= width) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

/** A word wider than its column is broken where it must, never drawn over its neighbour. */
function breakWord(sheet: Sheet, word: readonly Atom[], size: number, width: number, lines: Line[]): Line {
  let line: Line = { pieces: [], width: 0 };
  for (const atom of word) {
    let rest = writtenCharacters(atom.text);
    while (rest.length > 0) {
      const fits = fitting(sheet, atom, rest, size, width - line.width);
      // A column narrower than one character still takes one.
      const take = fits === 0 && line.pieces.length === 0 ? 1 : fits;
      add(line, measure(sheet, { ...atom, text: rest.slice(0, take).join('') }, size));
      rest = rest.slice(take);
      if (rest.length === 0) break;
      lines.push(line);
      line = { pieces: [], width: 0 };
    }
  }
  return line;
}

function breakParagraph(sheet: Sheet, spans: readonly Atom[], size: number, width: number): Line[] {
  const lines: Line[] = [];
  let line: Line = { pieces: [], width: 0 };
  for (const word of wordsOf(spans)) {
    const wide = trimmedWidth(sheet, word, size);
    if (line.width + wide > width && line.pieces.length > 0) {
      lines.push(line);
      line = { pieces: [], width: 0 };
    }
    if (wide > width) line = breakWord(sheet, word, size, width, lines);
    else
      add(
        line,
        word.flatMap((atom) => measure(sheet, atom, size)),
      );
  }
  lines.push(line);
  return lines;
}

/** Sets a text in lines of at most `width` points; line ends keep their space, so that read aloud words stay apart. */
export function breakLines(sheet: Sheet, content: Content, style: Style, width: number): Line[] {
  const given: readonly Span[] = typeof content === 'string' ? [{ text: content }] : content;
  const paragraphs: Atom[][] = [[]];
  for (const span of given) {
    const parts = tidy(span.text).split('\n');
    parts.forEach((part, index) => {
      if (index > 0) paragraphs.push([]);
      const text = index < parts.length - 1 ? `${part} ` : part;
      const face = span.face ?? style.face;
      paragraphs.at(-1)?.push({ text, face, colour: span.colour ?? style.colour });
    });
  }
  return paragraphs.flatMap((spans) => breakParagraph(sheet, spans, style.size, width));
}

/** The width a line takes when its closing space is left out. */
export function inkWidth(sheet: Sheet, line: Line, size: number): number {
  const last = line.pieces.at(-1);
  if (!last) return 0;
  const bare = last.text.trimEnd();
  return bare === last.text
    ? line.width
    : line.width - last.width + widthOf(sheet, { ...last, text: bare }, size);
}

/** Draws one line with its top at y, inside marked content that the caller has opened. */
export function drawLine(sheet: Sheet, line: Line, x: number, y: number, style: Style): void {
  const baseline = y + (style.leading - style.size) / 2 + style.size * 0.82;
  const { doc } = sheet;
  let at = x;
  if (line.actual !== undefined) doc.markContent('Span', { actual: line.actual });
  for (const piece of line.pieces) {
    const stands = line.actual === undefined ? piece.actual : undefined;
    if (stands !== undefined) doc.markContent('Span', { actual: stands });
    doc.font(piece.font, style.size).fillColor(piece.colour);
    doc.text(piece.text, at, baseline, { lineBreak: false, baseline: 'alphabetic' });
    if (stands !== undefined) doc.endMarkedContent();
    at += piece.width;
  }
  if (line.actual !== undefined) doc.endMarkedContent();
}
