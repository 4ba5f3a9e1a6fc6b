import { widthIn } from '@/lib/documents/kit/fonts';
import type { Colour, Style } from '@/lib/documents/kit/ink';
import { type Run, writtenCharacters } from '@/lib/documents/kit/runs';
import type { Sheet } from '@/lib/documents/kit/sheet';
import {
  type Atom,
  type Content,
  type Part,
  partsOf,
  setWords,
  shareOf,
  type Word,
} from '@/lib/documents/kit/words';

/** `actual` is what the whole line stands for when it shows only part of its text. */
export type Line = { parts: Part[]; width: number; actual?: string };

type Piece = Run & { colour: Colour; width: number };

function emptyLine(): Line {
  return { parts: [], width: 0 };
}

function add(line: Line, parts: readonly Part[], size: number): void {
  for (const part of parts) {
    line.parts.push(part);
    line.width += part.share * size;
  }
}

/** The line as it is drawn: neighbours in one font and colour together. */
function piecesOf(line: Line, size: number): Piece[] {
  const pieces: Piece[] = [];
  for (const { share, ...part } of line.parts) {
    const width = share * size;
    const last = pieces.at(-1);
    const joins = last && last.font === part.font && last.colour === part.colour;
    if (joins && last.actual === undefined && part.actual === undefined) {
      last.text += part.text;
      last.width += width;
    } else pieces.push({ ...part, width });
  }
  return pieces;
}

/** How many of these characters, at most 512, fit into a width; measured together, since kerning can widen a pair. */
function fitting(atom: Atom, characters: readonly string[], size: number, width: number): number {
  let fits = 0;
  let tooMany = Math.min(characters.length, 512) + 1;
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    const text = characters.slice(0, middle).join('').trimEnd();
    if (shareOf(partsOf({ ...atom, text })) * size <= width) fits = middle;
    else tooMany = middle;
  }
  return fits;
}

/** A word wider than its column is broken where it must, never drawn over its neighbour. */
function breakWord(word: Word, size: number, width: number, lines: Line[]): Line {
  let line = emptyLine();
  for (const atom of word.atoms) {
    let rest = writtenCharacters(atom.text);
    while (rest.length > 0) {
      const fits = fitting(atom, rest, size, width - line.width);
      // A column narrower than one character still takes one.
      const take = fits === 0 && line.parts.length === 0 ? 1 : fits;
      add(line, partsOf({ ...atom, text: rest.slice(0, take).join('') }), size);
      rest = rest.slice(take);
      if (rest.length === 0) break;
      lines.push(line);
      line = emptyLine();
    }
  }
  return line;
}

function breakParagraph(words: readonly Word[], size: number, width: number): Line[] {
  const lines: Line[] = [];
  let line = emptyLine();
  for (const word of words) {
    const wide = word.bare * size;
    if (line.width + wide > width && line.parts.length > 0) {
      lines.push(line);
      line = emptyLine();
    }
    if (wide > width) line = breakWord(word, size, width, lines);
    else add(line, word.parts, size);
  }
  lines.push(line);
  return lines;
}

/** Sets a text in lines of at most `width` points; line ends keep their space, so that read aloud words stay apart. */
export function breakLines(content: Content, style: Style, width: number): Line[] {
  return setWords(content, style).flatMap((words) => breakParagraph(words, style.size, width));
}

/** The width a line takes when its closing space is left out. */
export function inkWidth(line: Line, size: number): number {
  const last = piecesOf(line, size).at(-1);
  if (!last) return 0;
  const bare = last.text.trimEnd();
  return bare === last.text ? line.width : line.width - last.width + widthIn(last.font, bare) * size;
}

// PDFKit measures and counts the words of what it draws, for underlining and links, unless it is told.
const drawing = { lineBreak: false, baseline: 'alphabetic', wordCount: 1 } as const;

/** Draws one line with its top at y, inside marked content that the caller has opened. */
export function drawLine(sheet: Sheet, line: Line, x: number, y: number, style: Style): void {
  const baseline = y + (style.leading - style.size) / 2 + style.size * 0.82;
  const { doc } = sheet;
  let at = x;
  if (line.actual !== undefined) doc.markContent('Span', { actual: line.actual });
  for (const piece of piecesOf(line, style.size)) {
    const stands = line.actual === undefined ? piece.actual : undefined;
    if (stands !== undefined) doc.markContent('Span', { actual: stands });
    doc.font(piece.font, style.size).fillColor(piece.colour);
    doc.text(piece.text, at, baseline, { ...drawing, textWidth: piece.width });
    if (stands !== undefined) doc.endMarkedContent();
    at += piece.width;
  }
  if (line.actual !== undefined) doc.endMarkedContent();
}
