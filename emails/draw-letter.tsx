import { render, toPlainText } from 'react-email';
import { Frame } from './frame';
import type { Letter, Setting } from './letter';

export type DrawnLetter = { subject: string; html: string; text: string };

const asText = {
  selectors: [
    { selector: 'h1', options: { uppercase: false, leadingLineBreaks: 2 } },
    // A term stands on the line above its text.
    { selector: 'p.term', format: 'paragraph', options: { leadingLineBreaks: 2, trailingLineBreaks: 1 } },
    { selector: 'p.told', format: 'paragraph', options: { leadingLineBreaks: 1, trailingLineBreaks: 1 } },
  ],
};

/** A letter in its frame as HTML and as plain text, both from the one source. */
export async function drawLetter(letter: Letter, setting: Setting): Promise<DrawnLetter> {
  const html = await render(<Frame letter={letter} setting={setting} />);
  return { subject: letter.subject, html, text: toPlainText(html, asText).trim() };
}
