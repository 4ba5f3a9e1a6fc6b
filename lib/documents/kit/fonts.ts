import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font } from 'fontkit';
import { Shapes } from '@/lib/documents/kit/shapes';

const fontNames = [
  'next-regular',
  'next-bold',
  'mono-regular',
  'mono-bold',
  'noto-regular',
  'noto-bold',
] as const;

export type FontName = (typeof fontNames)[number];

const files: Record<FontName, string> = {
  'next-regular': 'AtkinsonHyperlegibleNext-Regular.ttf',
  'next-bold': 'AtkinsonHyperlegibleNext-Bold.ttf',
  'mono-regular': 'AtkinsonHyperlegibleMono-Regular.ttf',
  'mono-bold': 'AtkinsonHyperlegibleMono-Bold.ttf',
  'noto-regular': 'NotoSans-Regular.ttf',
  'noto-bold': 'NotoSans-Bold.ttf',
};

export type Face = 'text' | 'strong' | 'mono' | 'mono-strong';

// Atkinson Hyperlegible covers accented Latin only; Noto Sans brings Greek, Cyrillic and the rarer signs.
const chains: Record<Face, readonly [FontName, FontName]> = {
  text: ['next-regular', 'noto-regular'],
  strong: ['next-bold', 'noto-bold'],
  mono: ['mono-regular', 'noto-regular'],
  'mono-strong': ['mono-bold', 'noto-bold'],
};

type Opened = { font: Font; shapes: Shapes };

// Parsed once per process: parsing costs some 90 ms a document, a parsed font gives the same bytes.
const opened = new Map<FontName, Opened>();

function open(name: FontName): Opened {
  const known = opened.get(name);
  if (known) return known;
  const parsed = create(readFileSync(join(process.cwd(), 'assets', 'fonts', files[name])));
  const shapes = new Shapes(parsed);
  // What PDFKit embeds: the parsed font, with every word it asks for from the ones that were shaped before.
  const font: Font = Object.create(parsed, { layout: { value: (word: string) => shapes.layout(word) } });
  opened.set(name, { font, shapes });
  return { font, shapes };
}

/**
 * Makes every face of the documents known to a PDFKit document under its font name. Each is opened at once: PDFKit
 * numbers fonts as they are opened, and that must not hang on what is measured or drawn first. One that no page uses
 * is not embedded.
 */
export function registerFonts(doc: PDFKit.PDFDocument): void {
  for (const name of fontNames) doc.registerFont(name, open(name).font).font(name);
}

/** Width of a text in a font, as a share of its size. */
export function widthIn(name: FontName, text: string): number {
  return open(name).shapes.width(text) / 1000;
}

/** True when a font has a glyph for every character of a text. */
export function holds(name: FontName, text: string): boolean {
  const font = open(name).font;
  for (const character of text) {
    if (!font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)) return false;
  }
  return true;
}

/** The first font of a face's chain that holds every part of one written character, or null when none does. */
export function fontFor(face: Face, cluster: string): FontName | null {
  return chains[face].find((name) => holds(name, cluster)) ?? null;
}

/** The font a face is set in when its own letters are enough, as they are for plain ASCII. */
export function firstFont(face: Face): FontName {
  return chains[face][0];
}

/** The font that shows the sign for a missing character. */
export function lastFont(face: Face): FontName {
  return chains[face][1];
}
