import { z } from 'zod';

/** Why a message did not leave. `isFinal` when trying again cannot help. */
export type Failure = { isFinal: boolean; sentence: string };

const smtpError = z.object({
  code: z.string().optional(),
  command: z.string().optional(),
  responseCode: z.number().optional(),
  response: z.string().optional(),
});

const unreachable = new Set([
  'ECONNECTION',
  'ECONNREFUSED',
  'ECONNRESET',
  'EDNS',
  'ENOTFOUND',
  'ESOCKET',
  'ETIMEDOUT',
]);

/**
 * What a mail program's error means for the message. The server's own words are left out, because they repeat
 * addresses; its codes stay.
 *
 * A reply of 5xx to the envelope or the content is final, 4xx is not (RFC 5321 section 4.2.1). Everything about the
 * connection or the sign-in is not final either: the settings can be put right.
 *
 * readFailure({ code: 'EENVELOPE', command: 'RCPT TO', responseCode: 550, response: '550 5.1.1 <a@example.org> unknown' })
 * -> { isFinal: true, sentence: 'The mail server refused the address (550 5.1.1).' }
 */
export function readFailure(error: unknown): Failure {
  const parsed = smtpError.safeParse(error);
  if (!parsed.success)
    return { isFinal: false, sentence: 'The message could not be handed to the mail server.' };
  const { code = '', command = '', responseCode, response = '' } = parsed.data;
  const codes = shownCodes(responseCode, response);

  if (code === 'EAUTH') return { isFinal: false, sentence: `The mail server refused the sign-in${codes}.` };
  if (code === 'ETLS') return { isFinal: false, sentence: 'No secure connection to the mail server.' };
  const isRefusal = responseCode !== undefined && isForGood(responseCode);
  if (code === 'EENVELOPE') {
    const what = command === 'RCPT TO' || command === 'API' ? 'the address' : 'the sender or the address';
    return {
      isFinal: isRefusal || responseCode === undefined,
      sentence: `The mail server refused ${what}${codes}.`,
    };
  }
  if (code === 'EMESSAGE')
    return { isFinal: isRefusal, sentence: `The mail server refused the message${codes}.` };
  if (unreachable.has(code)) return { isFinal: false, sentence: `The mail server was not reached${codes}.` };
  return { isFinal: false, sentence: `The message could not be handed to the mail server${codes}.` };
}

/**
 * Whether a failure is of the mail server that the workshop sends by, and not of the reader's: by the beginnings of the sentences
 * above, since the codes behind them are those of a refused reader as well.
 */
export function isOurServer(sentence: string): boolean {
  return OUR_SERVER.some((beginning) => sentence.startsWith(beginning));
}

const OUR_SERVER = [
  'The mail server refused the sign-in',
  'The mail server refused the sender',
  'The mail server was not reached',
  'No secure connection to the mail server',
  'The message could not be handed to the mail server',
];

// 503 complains about the order of commands, not about the message; a new connection may take it.
function isForGood(responseCode: number): boolean {
  return responseCode >= 500 && responseCode < 600 && responseCode !== 503;
}

// The reply code and the enhanced status code of RFC 3463, which name the trouble and nobody.
function shownCodes(responseCode: number | undefined, response: string): string {
  if (responseCode === undefined) return '';
  const enhanced = /^\d{3}[ -]([245]\.\d{1,3}\.\d{1,3})\b/.exec(response)?.[1];
  return enhanced ? ` (${responseCode} ${enhanced})` : ` (${responseCode})`;
}
