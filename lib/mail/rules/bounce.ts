/** What somebody does about a message that came back or was given up. */
export type Remedy = 'correct-address' | 'call' | 'send-later' | 'look';

/**
 * What to do about a message, from the words of the mail server that refused it. Told by the enhanced status code where
 * there is one (RFC 3463 section 3: x.1.z addressing, x.2.z mailbox, x.4.z network, x.7.z policy), else by the reply code.
 *
 * remedyOf('550 5.1.1 no such user') -> 'correct-address'; remedyOf('552 5.2.2 over quota') -> 'send-later'
 */
export function remedyOf(words: string): Remedy {
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
  'correct-address':
    'The address does not exist. Ask the customer by telephone for the right one, correct it, and send the message again.',
  call: 'Their mail server does not take it from us. Tell the customer by telephone, and ask for another address.',
  'send-later':
    'Their mailbox is full or cannot be reached for now. Send it again in a day or two, or ring them.',
  look: 'Read what the server said, and tell the customer by telephone until it is put right.',
};
