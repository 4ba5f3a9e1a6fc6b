import type { Style } from '@/lib/documents/kit/ink';
import { breakLines, type Line } from '@/lib/documents/kit/lines';
import { writtenCharacters } from '@/lib/documents/kit/runs';

function widthOnOneLine(text: string, style: Style): number {
  return breakLines(text, style, Number.MAX_SAFE_INTEGER)[0]?.width ?? 0;
}

/** A style made just small enough for its text to stand on one line, at most down to `least` of its size. */
export function fitted(text: string, style: Style, width: number, least = 0.6): Style {
  const wide = widthOnOneLine(text, style);
  const share = wide > width ? Math.max(least, (width / wide) * 0.998) : 1;
  return { ...style, size: style.size * share };
}

/** A text cut to a number of characters with a dot leader showing that it goes on. */
export function shortened(text: string, most: number): string {
  // A written character is one code unit at least.
  if (text.length <= most) return text;
  const characters = writtenCharacters(text);
  return characters.length <= most
    ? text
    : `${characters
        .slice(0, most - 1)
        .join('')
        .trimEnd()}…`;
}

/** Lines of a text where there is no other page to go to: what does not fit ends in "…", and the tree keeps all of it. */
export function limitedLines(text: string, style: Style, width: number, most: number): Line[] {
  const lines = breakLines(text, style, width);
  if (lines.length <= most) return lines;
  const characters = writtenCharacters(text);
  let short = 1;
  let long = characters.length;
  while (long - short > 1) {
    const middle = Math.floor((short + long) / 2);
    if (breakLines(shortened(text, middle), style, width).length <= most) short = middle;
    else long = middle;
  }
  const kept = breakLines(shortened(text, short), style, width).slice(0, most);
  return kept.map((line, index) =>
    index === kept.length - 1 ? { ...line, actual: text } : { ...line, actual: '' },
  );
}
