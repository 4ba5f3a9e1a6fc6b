import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import {
  bytesToSign,
  decodeCertificate,
  encodeCertificate,
  type SignedCertificate,
  type SignedLine,
} from '@/lib/warranty/rules/signature-payload';

const certificate: SignedCertificate = {
  keyId: 'k1',
  number: 'W4K7QX29D',
  revision: 1,
  serial: 'HHW-20417-C',
  issuedOn: day('2026-12-03'),
  lines: [
    { kind: 'work', term: 'P12M', startsOn: day('2026-12-03'), endsOn: day('2027-12-03') },
    { kind: 'part', term: 'P90D', startsOn: day('2026-12-03'), endsOn: day('2027-03-03') },
  ],
};

const hex = (bytes: Uint8Array) => Buffer.from(bytes).toString('hex');

describe('the bytes of a certificate', () => {
  it('are fixed: version, key, number, revision, folded serial, day, lines', () => {
    // 2026-12-03 is day 9833 after 2000-01-01: e9 4c in groups of seven bits, lowest first. 365 days are ed 02, 90 are 5a.
    expect(hex(encodeCertificate(certificate))).toBe(
      [
        '01',
        `02${hex(Buffer.from('k1'))}`,
        `09${hex(Buffer.from('W4K7QX29D'))}`,
        '01',
        `09${hex(Buffer.from('HHW20417C'))}`,
        'e94c',
        '02',
        `0004${hex(Buffer.from('P12M'))}e94ced02`,
        `0104${hex(Buffer.from('P90D'))}e94c5a`,
      ].join(''),
    );
  });

  it('are short enough for a code that a phone reads from paper', () => {
    expect(encodeCertificate(certificate).length).toBeLessThan(60);
  });

  it('are the same whatever the order of the lines', () => {
    const turned = { ...certificate, lines: [...certificate.lines].reverse() };
    expect(hex(encodeCertificate(turned))).toBe(hex(encodeCertificate(certificate)));
  });

  it('are the same for a serial written with other separators or in small letters', () => {
    expect(hex(encodeCertificate({ ...certificate, serial: 'hhw 20417c' }))).toBe(
      hex(encodeCertificate(certificate)),
    );
  });

  it('say what they are for before they are signed', () => {
    const signed = Buffer.from(bytesToSign(encodeCertificate(certificate)));
    expect(signed.toString('latin1')).toMatch(/^mendpost certificate 1\n/);
    expect(signed.length).toBe(23 + encodeCertificate(certificate).length);
  });

  const broken: { name: string; changes: Partial<SignedCertificate> }[] = [
    { name: 'a serial with nothing in it', changes: { serial: ' - ' } },
    { name: 'a negative revision', changes: { revision: -1 } },
    { name: 'half a revision', changes: { revision: 1.5 } },
    { name: 'a day before 2000', changes: { issuedOn: day('1999-12-31') } },
    {
      name: 'a term that is no period',
      changes: {
        lines: [{ kind: 'work', term: '12M', startsOn: day('2026-12-03'), endsOn: day('2027-12-03') }],
      },
    },
    {
      name: 'a line that ends before it starts',
      changes: {
        lines: [{ kind: 'work', term: 'P12M', startsOn: day('2026-12-03'), endsOn: day('2026-12-02') }],
      },
    },
  ];
  it.each(broken)('are refused for $name', ({ changes }) => {
    expect(() => encodeCertificate({ ...certificate, ...changes })).toThrow(RangeError);
  });
});

const someDay = fc.integer({ min: 0, max: 20_000 }).map((n) => addDays(day('2000-01-01'), n));
const someLine: fc.Arbitrary<SignedLine> = fc
  .tuple(
    fc.constantFrom('work' as const, 'part' as const),
    fc.constantFrom('P12M', 'P90D', 'P1Y6M'),
    someDay,
    fc.nat(4000),
  )
  .map(([kind, term, startsOn, length]) => ({ kind, term, startsOn, endsOn: addDays(startsOn, length) }));
const someCertificate: fc.Arbitrary<SignedCertificate> = fc.record({
  keyId: fc.stringMatching(/^[a-z0-9]{1,8}$/),
  number: fc.stringMatching(/^W[0-9A-HJKMNP-TV-Z]{8}$/),
  revision: fc.integer({ min: 1, max: 1_000_000 }),
  serial: fc.stringMatching(/^[0-9A-ZÄÖÜ]{1,20}$/),
  issuedOn: someDay,
  lines: fc.array(someLine, { maxLength: 6 }),
});

const sorted = (lines: readonly SignedLine[]) => lines.map((line) => JSON.stringify(line)).sort();

describe('reading the bytes back', () => {
  it('gives the same certificate, for every certificate', () => {
    fc.assert(
      fc.property(someCertificate, (one) => {
        const read = decodeCertificate(encodeCertificate(one));
        expect({ ...read, lines: sorted(read?.lines ?? []) }).toEqual({ ...one, lines: sorted(one.lines) });
      }),
    );
  });

  it('gives nothing for any bytes with one added at the end', () => {
    fc.assert(
      fc.property(someCertificate, fc.integer({ min: 0, max: 255 }), (one, extra) => {
        expect(decodeCertificate(Uint8Array.from([...encodeCertificate(one), extra]))).toBeNull();
      }),
    );
  });

  it('gives nothing for bytes that are cut short anywhere', () => {
    const bytes = encodeCertificate(certificate);
    for (let length = 0; length < bytes.length; length += 1)
      expect(decodeCertificate(bytes.subarray(0, length))).toBeNull();
  });

  it('never reads other bytes as the same certificate: there is one spelling', () => {
    const bytes = encodeCertificate(certificate);
    for (let i = 0; i < bytes.length; i += 1)
      for (let bit = 0; bit < 8; bit += 1) {
        const flipped = Uint8Array.from(bytes);
        flipped[i] = (flipped[i] ?? 0) ^ (1 << bit);
        expect(decodeCertificate(flipped)).not.toEqual(certificate);
      }
  });

  it('gives nothing and never throws for bytes of a stranger', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        const read = decodeCertificate(bytes);
        if (read !== null) expect(hex(encodeCertificate(read))).toBe(hex(bytes));
      }),
      { numRuns: 2000 },
    );
  });

  it('does not take an over-long way to write a number', () => {
    const bytes = encodeCertificate({ ...certificate, lines: [] });
    // The last byte is the count of lines, 0; written in two bytes it would be 80 00.
    expect(decodeCertificate(bytes)).not.toBeNull();
    expect(decodeCertificate(Uint8Array.from([...bytes.subarray(0, -1), 0x80, 0x00]))).toBeNull();
  });
});
