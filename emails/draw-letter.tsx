import { render, toPlainText } from 'react-email';
import { Frame } from './frame';
import type { Letter, Setting } from './letter';

export type DrawnLetter = { subject: string; html: string; text: string };

/** A letter in its frame as HTML and as plain text, both from the one source. */
export async function drawLetter(letter: Letter, setting: Setting): Promise<DrawnLetter> {
  const html = await render(<Frame letter={letter} setting={setting} />);
  const text = toPlainText(html, { selectors: [{ selector: 'h1', options: { uppercase: false } }] });
  return { subject: letter.subject, html, text: text.replace(/\n{3,}/g, '\n\n').trim() };
}
