import { generateKeyPairSync } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { accessoryDifferences } from '@/lib/jobs/rules/arrival';
import { matchParcels } from '@/lib/jobs/rules/parcel-match';
import { soughtFrom, telephoneIn } from '@/lib/jobs/rules/sought';
import { drawNumber } from '@/lib/numbers/job-number';
import { signCertificate } from '@/lib/warranty/signature';

describe('what is sought', () => {
  const number = drawNumber('W', () => 5);

  it.each([
    ['a number with hyphens', `${number.slice(0, 1)}-${number.slice(1, 5)}-${number.slice(5)}`],
    ['a number in small letters with spaces', ` ${number.slice(0, 4).toLowerCase()} ${number.slice(4)} `],
    ['an address that ends in it', `https://repairs.example.org/certificate/${number}`],
  ])('is read from %s', (_name, typed) => {
    expect(soughtFrom(typed)).toEqual({ kind: 'number', of: 'W', number });
  });

  it('is read from the code of a certificate', () => {
    const { privateKey } = generateKeyPairSync('ed25519');
    const line = { kind: 'work', term: 'P12M' } as const;
    const token = signCertificate(
      {
        keyId: 'k1',
        number,
        revision: 2,
        serial: 'HW2-10480-K',
        issuedOn: day('2026-12-03'),
        lines: [{ ...line, startsOn: day('2026-12-03'), endsOn: day('2027-12-03') }],
      },
      privateKey,
    );
    expect(soughtFrom(`https://repairs.example.org/c/${token}`)).toEqual({ kind: 'number', of: 'W', number });
  });

  it('is text when the code was cut short', () => {
    expect(soughtFrom(`https://repairs.example.org/c/${'A'.repeat(120)}`).kind).toBe('text');
  });

  it('says that one character looks wrong in what has the form of our numbers', () => {
    const last = number.at(-1) === '7' ? '8' : '7';
    expect(soughtFrom(number.slice(0, -1) + last)).toMatchObject({ kind: 'text', wrong: 'check' });
  });

  // RR473124829GB is the worked form of UPU S10; its check digit 9 is replaced.
  it.each([
    ['RR473124829GB', null],
    ['RR473124828GB', 'reference'],
    ['HW2-10480-K', null],
    ['Maren Holt', null],
  ] as const)('reads %s with the fault %s', (typed, wrong) => {
    expect(soughtFrom(typed)).toMatchObject({ kind: 'text', wrong });
  });

  it('is nothing when only spaces were sent', () => {
    expect(soughtFrom('  ')).toEqual({ kind: 'nothing' });
  });
});

describe('which parcel it fits', () => {
  const recorder = { number: 'J1', serial: 'HW2-10480-K', reference: 'RR 4731 2482 9GB' };
  const pedal = { number: 'J2', serial: 'QF-0031', reference: '' };
  const twin = { number: 'J3', serial: 'QF0031', reference: '' };

  it.each([
    ['the carrier’s reference without its spaces', 'rr473124829gb', [{ number: 'J1', by: 'reference' }]],
    ['the serial in another spelling', 'hw2 10480 k', [{ number: 'J1', by: 'serial' }]],
    ['a serial two bookings carry', 'QF-0031', ['J2', 'J3'].map((number) => ({ number, by: 'serial' }))],
    ['a serial with O read for 0', 'HW2-1O48O-K', [{ number: 'J1', by: 'near-serial' }]],
    ['a serial with one digit missing', 'HW2-1048-K', [{ number: 'J1', by: 'near-serial' }]],
    ['another serial', 'ZZ-9911', []],
    ['no letters or digits at all', '--', []],
  ])('by %s', (_name, typed, expected) => {
    expect(matchParcels(typed, [recorder, pedal, twin])).toEqual(expected);
  });

  it('lists no near serial beside the very serial', () => {
    const near = { number: 'J4', serial: 'QF-0037', reference: '' };
    expect(matchParcels('QF-0031', [near, pedal])).toEqual([{ number: 'J2', by: 'serial' }]);
  });

  it('never fits a parcel without a reference by an empty text', () => {
    expect(matchParcels('', [pedal])).toEqual([]);
  });
});

describe('a telephone number in what was typed', () => {
  it.each([
    ['+44 20 7946 0123', '9460123'],
    ['0044 20 7946 0123', '9460123'],
    ['(020) 7946-0123', '9460123'],
    [' 946.01.23 ', '9460123'],
    ['460 123', '460123'],
    ['123456789012345', '9012345'],
    ['60 123', null],
    ['1234567890123456', null],
    ['HW2-20991-77', null],
    ['12 Chandler Row 345678', null],
    ['020+79460123', null],
    ['', null],
  ])('%j is %j', (text, last) => {
    expect(telephoneIn(text)).toBe(last);
  });
});

it('tells what was missing of a parcel first, then what came with it', () => {
  const told = [
    { name: 'Strap', isArrived: true },
    { name: 'Power supply', isArrived: false },
  ];
  expect(accessoryDifferences(told, ['Case'])).toEqual([
    'Power supply was not in the parcel',
    'Case came with it and is kept with the unit',
  ]);
  expect(accessoryDifferences(told.slice(0, 1), [])).toEqual([]);
});
