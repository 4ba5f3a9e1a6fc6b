import { generateKeyPairSync, sign } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '@/lib/calendar/day';
import { encodeCertificate, type SignedCertificate } from '@/lib/warranty/rules/signature-payload';
import {
  isSignatureOf,
  publicKeysFrom,
  readPrivateKey,
  readPublicKey,
  readToken,
  signCertificate,
} from '@/lib/warranty/signature';

const pair = generateKeyPairSync('ed25519', {
  privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
  publicKeyEncoding: { type: 'spki', format: 'pem' },
});
const other = generateKeyPairSync('ed25519', {
  privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
  publicKeyEncoding: { type: 'spki', format: 'pem' },
});
const privateKey = readPrivateKey(pair.privateKey);
const keys = publicKeysFrom([
  { id: 'k1', publicKey: pair.publicKey },
  { id: 'k2', publicKey: other.publicKey },
]);

const certificate: SignedCertificate = {
  keyId: 'k1',
  number: 'W4K7QX29D',
  revision: 1,
  serial: 'HHW-20417-C',
  issuedOn: day('2026-12-03'),
  lines: [
    { kind: 'part', term: 'P90D', startsOn: day('2026-12-03'), endsOn: day('2027-03-03') },
    { kind: 'work', term: 'P12M', startsOn: day('2026-12-03'), endsOn: day('2027-12-03') },
  ],
};
const token = signCertificate(certificate, privateKey);

function withLine(index: number, change: Partial<SignedCertificate['lines'][number]>): SignedCertificate {
  return {
    ...certificate,
    lines: certificate.lines.map((line, i) => (i === index ? { ...line, ...change } : line)),
  };
}

/** Every field once, changed as little as it can be. */
const flipped: { name: string; changed: SignedCertificate }[] = [
  { name: 'the key id', changed: { ...certificate, keyId: 'k2' } },
  { name: 'one character of the number', changed: { ...certificate, number: 'W4K7QX29E' } },
  { name: 'the revision', changed: { ...certificate, revision: 2 } },
  { name: 'one character of the serial', changed: { ...certificate, serial: 'HHW-20417-G' } },
  { name: 'the day of issue', changed: { ...certificate, issuedOn: addDays(certificate.issuedOn, 1) } },
  ...[0, 1].flatMap((i) => [
    {
      name: `the kind of line ${i + 1}`,
      changed: withLine(i, { kind: i === 0 ? 'work' : 'part' }),
    },
    { name: `the term of line ${i + 1}`, changed: withLine(i, { term: 'P13M' }) },
    { name: `the start of line ${i + 1}`, changed: withLine(i, { startsOn: day('2026-12-04') }) },
    { name: `the end of line ${i + 1}`, changed: withLine(i, { endsOn: day('2027-12-04') }) },
  ]),
  { name: 'a line left out', changed: { ...certificate, lines: certificate.lines.slice(0, 1) } },
  {
    name: 'a line added',
    changed: { ...certificate, lines: [...certificate.lines, ...certificate.lines.slice(0, 1)] },
  },
];

describe('a signed certificate', () => {
  it('is read back with everything it says', () => {
    expect(readToken(token, keys)).toEqual({
      valid: true,
      certificate: {
        ...certificate,
        serial: 'HHW20417C',
        lines: [certificate.lines[1], certificate.lines[0]],
      },
    });
  });

  it('has the same token whenever it is signed', () => {
    expect(signCertificate(certificate, privateKey)).toBe(token);
  });

  it('fits in an address and a code on paper', () => {
    expect(token).toMatch(/^[A-Za-z0-9_-]+$/);
    expect(token.length).toBeLessThan(180);
  });

  it('is the signature of the record it was made from, the serial however written', () => {
    expect(isSignatureOf(token, certificate, keys)).toBe(true);
    expect(isSignatureOf(token, { ...certificate, serial: 'hhw20417c' }, keys)).toBe(true);
  });
});

describe('a copy with one thing changed', () => {
  it.each(flipped)('fails against the record: $name', ({ changed }) => {
    expect(isSignatureOf(token, changed, keys)).toBe(false);
  });

  it.each(flipped)('fails under the old signature: $name', ({ changed }) => {
    const signature = Buffer.from(token, 'base64url').subarray(-64);
    const forged = Buffer.concat([encodeCertificate(changed), signature]).toString('base64url');
    expect(readToken(forged, keys)).toEqual({ valid: false, reason: 'signature' });
  });

  it('fails for every character of the token, put to any neighbour in the alphabet', () => {
    const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    for (let i = 0; i < token.length; i += 1)
      for (const step of [1, 2, 16, 32]) {
        const at = alphabet.indexOf(token[i] ?? '');
        const changed = token.slice(0, i) + alphabet[(at + step) % 64] + token.slice(i + 1);
        expect(readToken(changed, keys).valid).toBe(false);
      }
  });
});

describe('a token that is no signature of ours', () => {
  const cases: { name: string; token: string; reason: string }[] = [
    { name: 'nothing', token: '', reason: 'format' },
    { name: 'words', token: 'not a token', reason: 'format' },
    { name: 'cut short', token: token.slice(0, -1), reason: 'format' },
    { name: 'padding added', token: `${token}=`, reason: 'format' },
    { name: 'a very long text', token: 'A'.repeat(100_000), reason: 'format' },
    { name: 'a signature alone', token: Buffer.alloc(64).toString('base64url'), reason: 'format' },
    {
      name: 'a key nobody knows',
      token: signCertificate({ ...certificate, keyId: 'k9' }, privateKey),
      reason: 'unknown-key',
    },
    {
      name: 'signed with another key under our name',
      token: signCertificate(certificate, readPrivateKey(other.privateKey)),
      reason: 'signature',
    },
    {
      name: 'the same bytes signed for another purpose',
      token: Buffer.concat([
        encodeCertificate(certificate),
        sign(null, encodeCertificate(certificate), privateKey),
      ]).toString('base64url'),
      reason: 'signature',
    },
  ];
  it.each(cases)('$name: $reason', ({ token: strange, reason }) => {
    expect(readToken(strange, keys)).toEqual({ valid: false, reason });
  });
});

describe('keys', () => {
  // RFC 8037 appendix A.1 and A.2: the Ed25519 key of RFC 8032 section 7.1 test 1 as a JWK.
  const jwk = {
    kty: 'OKP',
    crv: 'Ed25519',
    d: 'nWGxne_9WmC6hEr0kuwsxERJxWl7MmkZcDusAxyuf2A',
    x: '11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo',
  };

  it('the published JWK signs the published empty message as RFC 8032 section 7.1 test 1 says', () => {
    const signature = sign(null, Buffer.alloc(0), readPrivateKey(JSON.stringify(jwk)));
    expect(signature.toString('hex')).toBe(
      'e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155' +
        '5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b',
    );
  });

  it('the published public half checks what its private half signed', () => {
    const { d, ...half } = jwk;
    expect(d).toHaveLength(43);
    const published = publicKeysFrom([{ id: 'k1', publicKey: JSON.stringify(half) }]);
    const signed = signCertificate(certificate, readPrivateKey(JSON.stringify(jwk)));
    expect(readToken(signed, published).valid).toBe(true);
  });

  it('a key of another kind is refused', () => {
    const rsa = generateKeyPairSync('rsa', {
      modulusLength: 2048,
      privateKeyEncoding: { type: 'pkcs8', format: 'pem' },
      publicKeyEncoding: { type: 'spki', format: 'pem' },
    });
    expect(() => readPrivateKey(rsa.privateKey)).toThrow(/Ed25519/);
    expect(() => readPublicKey(rsa.publicKey)).toThrow(/Ed25519/);
  });

  it('a retired key still checks what it signed', () => {
    const signed = signCertificate({ ...certificate, keyId: 'k2' }, readPrivateKey(other.privateKey));
    expect(readToken(signed, keys).valid).toBe(true);
  });
});
