export type TextBlock =
  | { kind: 'heading'; text: string }
  | { kind: 'paragraph'; lines: string[] }
  | { kind: 'list'; items: string[] };

/**
 * Splits a text that the owner wrote into headings, paragraphs and lists; it never yields markup, only plain strings.
 *
 * A line that begins with "#" is a heading, lines that begin with "- " or "* " are a list, an empty line ends a
 * paragraph, a single line break is kept. Everything else, tags included, is text and is shown as it was typed.
 *
 *     textBlocks('# Payment\nWithin 14 days.\n\n- card\n- transfer')
 *     → heading Payment, paragraph ['Within 14 days.'], list ['card', 'transfer']
 */
export function textBlocks(text: string): TextBlock[] {
  const blocks: TextBlock[] = [];
  let isNewBlock = true;
  for (const raw of text.split(/\r\n|\r|\n/)) {
    const line = raw.trim();
    const last = blocks.at(-1);
    const heading = /^#+\s*(\S.*)$/.exec(line)?.[1];
    const item = /^[-*•]\s+(\S.*)$/.exec(line)?.[1];
    if (line === '' || /^#+$/.test(line)) {
      isNewBlock = true;
      continue;
    }
    if (heading !== undefined) blocks.push({ kind: 'heading', text: heading });
    else if (item !== undefined) {
      if (last?.kind === 'list' && !isNewBlock) last.items.push(item);
      else blocks.push({ kind: 'list', items: [item] });
    } else if (last?.kind === 'paragraph' && !isNewBlock) last.lines.push(line);
    else blocks.push({ kind: 'paragraph', lines: [line] });
    isNewBlock = false;
  }
  return blocks;
}
