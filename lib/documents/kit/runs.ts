import { type Face, type FontName, firstFont, fontFor, holds, lastFont } from '@/lib/documents/kit/fonts';

/** A stretch of text in one font; `actual` holds what was written where no font has the character. */
export type Run = { text: string; font: FontName; actual?: string };

const clusters = new Intl.Segmenter('en', { granularity: 'grapheme' });

// Direction marks, zero-width signs, soft hyphen and variation selectors: nothing to draw, and a reordering mark
// in a typed name could make a printed line say something else than the record.
const invisible = /[\p{Default_Ignorable_Code_Point}\p{Bidi_Control}]/gu;

/** One form for the same letter, no control characters, line ends as \n. */
export function tidy(text: string): string {
  return (
    text
      .normalize('NFC')
      .replace(/\r\n?|[\u0085\u2028\u2029]/g, '\n')
      // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is being taken out
      .replace(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/g, ' ')
      .replace(invisible, '')
  );
}

/** The written characters of a text: a letter with its accents counts as one. */
export function writtenCharacters(text: string): string[] {
  return Array.from(clusters.segment(text), (part) => part.segment);
}

/**
 * Cuts text into runs by font, character by character; a character no font holds shows as U+FFFD and keeps its text.
 * A word with a letter that the face's own font lacks is set in the other font as a whole where that holds all of it,
 * since a Greek name with its pi from another font reads badly.
 */
export function runsOf(text: string, face: Face): Run[] {
  if (/^[\u0020-\u007e]*$/.test(text)) return text === '' ? [] : [{ text, font: firstFont(face) }];
  const runs: Run[] = [];
  const add = (piece: Run): void => {
    const last = runs.at(-1);
    const isSameKind = (last?.actual === undefined) === (piece.actual === undefined);
    if (!last || last.font !== piece.font || !isSameKind) {
      runs.push({ ...piece });
      return;
    }
    last.text += piece.text;
    if (piece.actual !== undefined) last.actual = `${last.actual ?? ''}${piece.actual}`;
  };
  for (const word of text.match(/[^ ]+| +/g) ?? []) {
    const pieces = writtenCharacters(word).map((cluster) => runOf(cluster, face));
    const other = lastFont(face);
    const needsOther = pieces.some((piece) => piece.font === other && /\p{L}/u.test(piece.text));
    if (needsOther && holds(other, word)) add({ text: word, font: other });
    else for (const piece of pieces) add(piece);
  }
  return runs;
}

function runOf(cluster: string, face: Face): Run {
  const font = fontFor(face, cluster);
  return font === null ? { text: '\ufffd', font: lastFont(face), actual: cluster } : { text: cluster, font };
}

/**
 * The characters of a text that no embedded font can draw, each once.
 * Example: `uncoveredCharacters('Zoë 山')` gives `['山']`.
 */
export function uncoveredCharacters(text: string): string[] {
  const missing = runsOf(tidy(text).replaceAll('\n', ' '), 'text').flatMap((run) =>
    writtenCharacters(run.actual ?? ''),
  );
  return [...new Set(missing)];
}
