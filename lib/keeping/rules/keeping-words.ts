import { REQUEST_MONTHS } from './retention';

/**
 * What the privacy page says of how long things are kept, by what the program does on its own; `keepMonths` after a job is closed,
 * 0 for never by itself.
 */
export function keepingWords(keepMonths: number): string[] {
  const jobs =
    keepMonths === 0
      ? 'What we know of you from a job is kept until you ask us to remove it.'
      : `What we know of you from a job is removed ${keepMonths} months after it was closed, but never while a certificate of it runs or a claim is open.`;
  return [
    `A request for a price that was not booked is removed ${REQUEST_MONTHS} months after the last word on it. One with a price that you said yes to stays until you book, or one of us ends it.`,
    jobs,
    'What stands on an invoice stays for as long as bookkeeping law asks.',
  ];
}
