import type { Font, Glyph, Position } from 'fontkit';

type Shape = { glyphs: readonly Glyph[]; positions: readonly Position[]; advanceWidth: number };

const mostKept = 4000;
const longestKept = 40;

/** Words come again and again; serials, amounts and long strings of letters do not, and would only fill the memory. */
const comesAgain = (word: string) => word.length <= longestKept && !/\d/.test(word);

/**
 * What the words of one font look like, kept for the process. Shaping a word goes through every kerning and ligature
 * table, which is the dearest step of a document, and papers of one workshop share most of their words.
 */
export class Shapes {
  // A font with glyphs of its own, so that shaping leaves nothing behind in the one that documents embed.
  private readonly shaper: Font;
  private readonly scale: number;
  private readonly kept = new Map<string, Shape>();

  constructor(font: Font) {
    this.shaper = Object.create(font, { _glyphs: { value: {}, writable: true } });
    this.scale = 1000 / font.unitsPerEm;
  }

  /** One word for PDFKit, which scales the positions in place to 1000 units; a font that has these is left as it is. */
  layout(word: string): Shape {
    const shape = this.shape(word);
    if (this.scale === 1) return shape;
    return { ...shape, positions: shape.positions.map((position) => ({ ...position })) };
  }

  /** Width of a text in thousandths of its size; shaped word by word with the space after, as PDFKit draws it. */
  width(text: string): number {
    let width = 0;
    for (const word of text.match(/[^ ]* |[^ ]+$/g) ?? []) width += this.shape(word).advanceWidth;
    return width;
  }

  private shape(word: string): Shape {
    const known = this.kept.get(word);
    if (known) return known;
    const made = this.made(word);
    if (this.kept.size >= mostKept) this.kept.clear();
    if (comesAgain(word)) this.kept.set(word, made);
    return made;
  }

  /**
   * fontkit keeps each glyph with the characters it was first met for, so each word starts with no glyphs: else what a
   * word reads as would hang on the words before it, in this document or another.
   */
  private made(word: string): Shape {
    this.shaper._glyphs = {};
    const run = this.shaper.layout(word);
    return {
      glyphs: run.glyphs.map(({ id, advanceWidth, codePoints }) => ({ id, advanceWidth, codePoints })),
      positions: run.positions.map(({ xAdvance, yAdvance, xOffset, yOffset }) => ({
        xAdvance,
        yAdvance,
        xOffset,
        yOffset,
      })),
      advanceWidth: run.advanceWidth * this.scale,
    };
  }
}
