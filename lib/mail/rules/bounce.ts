import { isOurServer } from './failure';

/** What somebody does about a message that came back or was given up. */
export type Remedy = 'look-at-settings' | 'correct-address' | 'call' | 'send-later' | 'look';

/**
 * What to do about a message, from the words of the mail server that refused it, or from why ours did not take it. Told by the enhanced status code where
 * there is one (RFC 3463 section 3: x.1.z addressing, x.2.z mailbox, x.4.z network, x.7.z policy), else by the reply code.
 *
 * remedyOf('550 5.1.1 no such user') -> 'correct-address'; remedyOf('552 5.2.2 over quota') -> 'send-later'
 */
export function remedyOf(words: string): Remedy {
  if (isOurServer(words)) return 'look-at-settings';
  const enhanced = /\b[45]\.(\d{1,3})\.(\d{1,3})\b/.exec(words);
  if (enhanced) {
    const [, subject, detail] = enhanced;
    if (subject === '1') return 'correct-address';
    if (subject === '2') return detail === '2' || detail === '0' ? 'send-later' : 'call';
    if (subject === '3' || subject === '4') return 'send-later';
    return subject === '7' ? 'call' : 'look';
  }
  if (/\b(550|551|553)\b/.test(words)) return 'correct-address';
  return /\b(4\d\d|552)\b/.test(words) ? 'send-later' : 'look';
}

export const REMEDY_SENTENCES: Record<Remedy, string> = {
  'look-at-settings':
    'The mail server that we send by did not take it, whoever it is for: look at SMTP_URL and MAIL_FROM, then send it again. Until it works, tell the customer by telephone.',
  'correct-address':
    'The address does not exist. Ask the customer by telephone for the right one, correct it, and send the message again.',
  call: 'Their mail server does not take it from us. Tell the customer by telephone, and ask for another address.',
  'send-later':
    'Their mailbox is full or cannot be reached for now. Send it again in a day or two, or ring them.',
  look: 'Read what the server said, and tell the customer by telephone until it is put right.',
};

/** What is done about a message to the workshop itself: what it says stands on the page. */
export const WORKSHOP_REMEDY =
  'It went to the workshop’s own address, and what the customer wrote stands on this page. Look at the address under Settings, Details.';

/** Said before a message is sent again whose job was moved since: a letter says what was so when it was written. */
export function movedOnSentence(stage: string): string {
  return `The job has moved on since this was written: it stands at “${stage}”. Sent again, it says what was so then.`;
}
