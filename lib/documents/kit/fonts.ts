import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, type Font } from 'fontkit';

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

// Parsed once per process: parsing costs some 90 ms a document, a parsed font gives the same bytes.
const parsed = new Map<FontName, Font>();

function fontNamed(name: FontName): Font {
  const known = parsed.get(name);
  if (known) return known;
  const font = create(readFileSync(join(process.cwd(), 'assets', 'fonts', files[name])));
  parsed.set(name, font);
  return font;
}

/**
 * A font for one document: it shares everything that was parsed, but not the glyphs. fontkit keeps each glyph with the
 * characters it was first met for, and meets the O of an Ö as a part, for no character at all: with glyphs shared, a
 * later document would lose its O to every screen reader, and its bytes would hang on what was drawn before it.
 */
function forOneDocument(font: Font): Font {
  return Object.create(font, { _glyphs: { value: {} } });
}

/**
 * Makes every face of the documents known to a PDFKit document under its font name. Each is opened at once: PDFKit
 * numbers fonts as they are opened, and that must not hang on what is measured or drawn first. One that no page uses
 * is not embedded.
 */
export function registerFonts(doc: PDFKit.PDFDocument): void {
  for (const name of fontNames) doc.registerFont(name, forOneDocument(fontNamed(name))).font(name);
}

/** True when a font has a glyph for every character of a text. */
export function holds(name: FontName, text: string): boolean {
  const font = fontNamed(name);
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
