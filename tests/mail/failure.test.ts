import { expect, test } from 'vitest';
import { readFailure } from '@/lib/mail/rules/failure';

// Reply codes: RFC 5321 section 4.2; enhanced status codes: RFC 3463. Error codes: nodemailer 10.6.1, dist/esm/errors.js.
test.each([
  [
    'a mailbox that is not there',
    {
      code: 'EENVELOPE',
      command: 'RCPT TO',
      responseCode: 550,
      response: '550 5.1.1 <a@example.org> unknown',
    },
    true,
    'The mail server refused the address (550 5.1.1).',
  ],
  [
    'a mailbox that is full for now',
    {
      code: 'EENVELOPE',
      command: 'RCPT TO',
      responseCode: 452,
      response: '452-4.2.2 full\n452 4.2.2 a@example.org',
    },
    false,
    'The mail server refused the address (452 4.2.2).',
  ],
  [
    'an address nodemailer cannot send to',
    { code: 'EENVELOPE', command: 'API' },
    true,
    'The mail server refused the address.',
  ],
  [
    'a sender who is not allowed',
    { code: 'EENVELOPE', command: 'MAIL FROM', responseCode: 553, response: '553 no' },
    true,
    'The mail server refused the sender or the address (553).',
  ],
  [
    'a message taken for unwanted',
    { code: 'EMESSAGE', command: 'DATA', responseCode: 554, response: '554 5.7.1 unwanted' },
    true,
    'The mail server refused the message (554 5.7.1).',
  ],
  [
    'a server busy at the end of a message',
    { code: 'EMESSAGE', command: 'DATA', responseCode: 451 },
    false,
    'The mail server refused the message (451).',
  ],
  [
    'commands in the wrong order',
    { code: 'EMESSAGE', command: 'DATA', responseCode: 503 },
    false,
    'The mail server refused the message (503).',
  ],
  [
    'a wrong password, which can be put right',
    { code: 'EAUTH', command: 'AUTH PLAIN', responseCode: 535, response: '535 5.7.8 bad' },
    false,
    'The mail server refused the sign-in (535 5.7.8).',
  ],
  ['a server that is down', { code: 'ESOCKET', command: 'CONN' }, false, 'The mail server was not reached.'],
  ['a name that leads nowhere', { code: 'EDNS', command: 'CONN' }, false, 'The mail server was not reached.'],
  [
    'no encryption',
    { code: 'ETLS', command: 'STARTTLS', responseCode: 454 },
    false,
    'No secure connection to the mail server.',
  ],
  [
    'an error of another kind',
    new TypeError('a@example.org'),
    false,
    'The message could not be handed to the mail server.',
  ],
  [
    'something that is no error',
    'a@example.org',
    false,
    'The message could not be handed to the mail server.',
  ],
])('%s', (_name, error, isFinal, sentence) => {
  expect(readFailure(error)).toEqual({ isFinal, sentence });
});
