import { type Face, widthIn } from '@/lib/documents/kit/fonts';
import type { Colour, Style } from '@/lib/documents/kit/ink';
import { type Run, runsOf, tidy } from '@/lib/documents/kit/runs';

/** Part of a paragraph set in another face or colour. */
export type Span = { text: string; face?: Face; colour?: Colour };
export type Content = string | readonly Span[];

/** A stretch of text before its font is chosen. */
export type Atom = { text: string; face: Face; colour: Colour };
/** A stretch in one font; `share` is its width as a share of the size it is set in. */
export type Part = Run & { colour: Colour; share: number };
/** A word with the spaces after it; `bare` is its width without them, as a share of the size. */
export type Word = { atoms: readonly Atom[]; parts: readonly Part[]; bare: number };

export function partsOf({ text, face, colour }: Atom): Part[] {
  return runsOf(text, face).map((run) => ({ ...run, colour, share: widthIn(run.font, run.text) }));
}

export function shareOf(parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.share, 0);
}

// A space between digits parts no line: telephone numbers and amounts stay readable as one.
const wordPattern = /(?:[^ ]|(?<=\d) (?=\d))+ *| +/g;

function wordOf(atoms: readonly Atom[]): Word {
  const parts = atoms.flatMap(partsOf);
  const bare = atoms.map((atom, index) =>
    index === atoms.length - 1 ? { ...atom, text: atom.text.trimEnd() } : atom,
  );
  return { atoms, parts, bare: shareOf(bare.flatMap(partsOf)) };
}

/** What two spans share without a space between stays one word. */
function wordsOf(spans: readonly Atom[]): Word[] {
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
  return words.map(wordOf);
}

function paragraphsOf(spans: readonly Span[], style: Style): Word[][] {
  const paragraphs: Atom[][] = [[]];
  for (const span of spans) {
    const parts = tidy(span.text).split('\n');
    parts.forEach((part, index) => {
      if (index > 0) paragraphs.push([]);
      const text = index < parts.length - 1 ? `${part} ` : part;
      const face = span.face ?? style.face;
      paragraphs.at(-1)?.push({ text, face, colour: span.colour ?? style.colour });
    });
  }
  return paragraphs.map(wordsOf);
}

// A page is often set at several sizes before it fits, and words do not depend on the size: kept for one document and
// a few more. Counted in characters, since one text can be as long as a hundred others.
const kept = new Map<string, Word[][]>();
const mostCharacters = 40_000;
let characters = 0;

/** The words of a text by paragraph, ready to be put into lines of any size. */
export function setWords(content: Content, style: Style): readonly (readonly Word[])[] {
  if (typeof content !== 'string') return paragraphsOf(content, style);
  const key = `${style.face} ${style.colour} ${content}`;
  const known = kept.get(key);
  if (known) return known;
  const words = paragraphsOf([{ text: content }], style);
  if (characters + content.length > mostCharacters) {
    kept.clear();
    characters = 0;
  }
  if (content.length > mostCharacters / 4) return words;
  kept.set(key, words);
  characters += content.length;
  return words;
}
