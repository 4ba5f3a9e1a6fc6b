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

function widthOf(sheet: Sheet, run: Run, size: number): number {
  return sheet.doc.font(run.font, size).widthOfString(run.text);
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

/** A word wider than its column is broken where it must, never drawn over its neighbour. */
function breakWord(sheet: Sheet, word: readonly Atom[], size: number, width: number, lines: Line[]): Line {
  let line: Line = { pieces: [], width: 0 };
  for (const atom of word) {
    let held = '';
    for (const character of writtenCharacters(atom.text)) {
      // Measured together: two letters side by side can be wider than the sum of both (kerning).
      const grown = measure(sheet, { ...atom, text: held + character }, size);
      const isFull = line.width + widthOfAll(grown) > width && character !== ' ';
      if (isFull && (held !== '' || line.pieces.length > 0)) {
        add(line, measure(sheet, { ...atom, text: held }, size));
        lines.push(line);
        line = { pieces: [], width: 0 };
        held = '';
      }
      held += character;
    }
    add(line, measure(sheet, { ...atom, text: held }, size));
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
