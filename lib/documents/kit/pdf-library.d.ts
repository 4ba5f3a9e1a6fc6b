// The two libraries' published types leave out what the kit needs; each entry below was read in their source
// (pdfkit 0.20.2: struct(), annotate(), file(), registerFont(), _fragment(); fontkit 2.0.4 ships no types at all).
declare module 'fontkit' {
  export type Glyph = { id: number; advanceWidth: number; codePoints: readonly number[] };
  export type Position = { xAdvance: number; yAdvance: number; xOffset: number; yOffset: number };
  export type Font = {
    readonly postscriptName: string;
    readonly unitsPerEm: number;
    /** Every glyph met so far, with the characters it was first met for. */
    _glyphs: object;
    layout(text: string): {
      glyphs: readonly Glyph[];
      positions: readonly Position[];
      readonly advanceWidth: number;
    };
    hasGlyphForCodePoint(codePoint: number): boolean;
  };
  export function create(bytes: Uint8Array): Font;
}

declare namespace PDFKit.Mixins {
  interface PDFFont {
    registerFont(name: string, parsed: import('fontkit').Font): this;
  }
  interface StructureElementOptions {
    bbox?: [number, number, number, number];
    scope?: 'Row' | 'Column';
  }
  interface TextOptions {
    textWidth?: number;
    wordCount?: number;
  }
  interface LinkDescription {
    structParent: PDFKit.PDFStructureElement;
    // PDFKit writes a primitive string as a PDF name and only a String object as PDF text.
    // biome-ignore lint/complexity/noBannedTypes: the wrapper object is what the library tells them apart by
    Contents: String;
  }
  interface PDFAnnotation {
    link(x: number, y: number, w: number, h: number, url: string, described: LinkDescription): this;
  }
  interface PDFAttachmentOptions {
    relationship?: 'Source' | 'Data' | 'Alternative' | 'Supplement' | 'Unspecified';
  }
}
