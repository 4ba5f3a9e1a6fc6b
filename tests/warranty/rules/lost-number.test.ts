import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { drawNumber } from '@/lib/numbers/job-number';
import { readLostNumber } from '@/lib/warranty/rules/lost-number';
import { encodeCertificate } from '@/lib/warranty/rules/signature-payload';

const draw = (kind: 'J' | 'Q' | 'W' | 'C') => {
  let next = 3;
  return drawNumber(kind, (n) => {
    next = (next * 7 + 5) % 31;
    return next % n;
  });
};
const CERTIFICATE = draw('W');
const JOB = draw('J');
const wrong = (number: string) => `${number.slice(0, 4)}${number[4] === '8' ? '9' : '8'}${number.slice(5)}`;

function codeOf(number: string): string {
  const compact = encodeCertificate({
    keyId: 'k1',
    number,
    revision: 1,
    serial: 'HW210480K',
    issuedOn: day('2026-12-03'),
    lines: [{ kind: 'work', term: 'P12M', startsOn: day('2026-12-03'), endsOn: day('2027-12-03') }],
  });
  return `https://post.example.org/c/${Buffer.concat([compact, Buffer.alloc(64)]).toString('base64url')}`;
}

describe('what someone who lost a certificate gives', () => {
  it.each([
    ['its number', CERTIFICATE, CERTIFICATE],
    [
      'its number in small letters and groups',
      `w-${CERTIFICATE.slice(1, 5)} ${CERTIFICATE.slice(5)}`.toLowerCase(),
      CERTIFICATE,
    ],
    ['the number of the job', JOB, JOB],
    ['the number of a claim', draw('C'), draw('C')],
    ['the address in the code of the job', `https://post.example.org/track/${JOB}`, JOB],
    ['the address in the code of a certificate', codeOf(CERTIFICATE), CERTIFICATE],
  ])('%s is read', (_name, typed, number) => {
    expect(readLostNumber(typed, '')).toEqual({ ok: true, number });
  });

  it('the serial alone is enough', () => {
    expect(readLostNumber(' ', 'HW2-10480-K')).toEqual({ ok: true, number: null });
  });

  it.each([
    ['nothing', '', '', /number of the certificate, job or claim, or the serial/],
    ['a serial without a character', '', ' - ', /or the serial/],
    ['one character that is wrong', wrong(CERTIFICATE), 'HW2-10480-K', /one character looks wrong/i],
    ['the number of a quote', draw('Q'), '', /number of a quote/],
  ])('%s is asked for again', (_name, typed, serial, sentence) => {
    const reading = readLostNumber(typed, serial);
    expect(reading.ok ? '' : reading.sentence).toMatch(sentence);
  });
});
