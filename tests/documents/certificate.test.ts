import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { drawCertificate } from '@/lib/documents/certificate';
import { readCertificatePayload } from '@/lib/documents/cover-attachment';
import { drawQuote } from '@/lib/documents/quote';
import { CERTIFICATE_REQUIREMENTS } from '@/lib/warranty/rules/certificate-requirements';
import { readToken } from '@/lib/warranty/signature';
import { certificate, quote } from '@/tests/documents/demo';
import { lettersOf, readPages, textOf } from '@/tests/documents/read-pdf';
import { publicKeys } from '@/tests/documents/signing';

describe('the promise and its proof', () => {
  test('page one is the promise, page two the work and the readings', async () => {
    const pages = readPages(await drawCertificate(certificate));
    expect(pages).toHaveLength(2);
    const [promise = '', proof = ''] = pages.map((page) =>
      lettersOf(page.texts.map(({ text }) => text).join(' ')),
    );
    for (const text of certificate.sections) {
      if (text.key === 'cover') continue;
      for (const paragraph of text.paragraphs) expect(promise).toContain(lettersOf(paragraph));
      for (const item of text.items?.texts ?? []) expect(promise).toContain(lettersOf(item));
    }
    for (const line of certificate.cover) expect(promise).toContain(lettersOf(line.what));
    for (const line of certificate.counted) expect(promise).toContain(lettersOf(line));
    for (const text of certificate.proof.work) expect(proof).toContain(lettersOf(text));
    for (const part of certificate.proof.parts) expect(proof).toContain(lettersOf(`${part.name}${part.lot}`));
    expect(proof).toContain(lettersOf('Jumper wire, pad A6 0.31 Ω 0 to 0.25 Ω Fail, redone 10 Dec 2026 MR'));
    expect(proof).toContain(lettersOf('Jumper wire, pad A6 0.09 Ω 0 to 0.25 Ω Pass 11 Dec 2026 MR'));
    expect(proof).toContain(
      lettersOf('24 pins through, 29 of 30 pairs open; A4 VBUS and A5 CC1 read joined Fail, redone'),
    );
    expect(proof).toContain(lettersOf('24 pins through, 30 pairs open Pass 11 Dec 2026 MR'));
    expect(proof).toContain(lettersOf('pad A6 to resistor R12, 30 mm of 0.1 mm wire 78 mΩ 85.9 mΩ'));
    expect(proof).toContain(lettersOf('Proved and signed off by MR on 11 Dec 2026.'));
  });

  test('a promise that runs on over its page is followed by the work where it ends', async () => {
    const long = certificate.sections.map((text) =>
      text.key === 'counting' ? { ...text, paragraphs: [text.paragraphs.join(' ').repeat(4)] } : text,
    );
    const pages = readPages(await drawCertificate({ ...certificate, sections: long }));
    const proofOn = pages.findIndex(({ texts }) => texts.some(({ text }) => /The work behind/.test(text)));
    const rightsOn = pages.findIndex(({ texts }) =>
      texts.some(({ text }) => /Your rights by law/.test(text)),
    );
    expect(rightsOn).toBe(1);
    expect(proofOn).toBe(rightsOn);
  });

  test('number, revision, what it replaces, end and last day to claim stand in the docket', async () => {
    const text = textOf(await drawCertificate(certificate));
    expect(text).toContain('W-7YVS-QJZ4');
    expect(text).toContain('12 Dec 2026, revision 2, replaces revision 1');
    expect(text).toContain('Covered until Sunday 12 December 2027');
    expect(text).toContain('Monday 13 December 2027');
    expect(text).toContain('TW2-0O51-18B');
  });

  test('a first revision replaces nothing', async () => {
    const first = { ...certificate, revision: 1, replaces: null };
    expect(textOf(await drawCertificate(first))).not.toContain('replaces');
  });

  // Directive (EU) 2019/771 Art. 17(2), 16 CFR 701.3(a), Consumer Rights Act 2015 s.30, as listed in certificate-requirements.ts.
  test('every section that the published lists of a written warranty ask for is on the paper', async () => {
    const letters = lettersOf(textOf(await drawCertificate(certificate)));
    const told = new Map(certificate.sections.map((section) => [section.key, section]));
    const asked = CERTIFICATE_REQUIREMENTS.map(({ section }) => section).filter((key) => told.has(key));
    expect(asked.length).toBeGreaterThan(10);
    for (const key of asked) {
      const [paragraph = ''] = told.get(key)?.paragraphs ?? [];
      expect(letters).toContain(lettersOf(paragraph));
    }
  });
});

describe('the cover inside the file', () => {
  test('comes out as it went in, and its token is genuine', async () => {
    const read = readCertificatePayload(await drawCertificate(certificate));
    expect(read).toEqual(certificate.payload);
    const token = readToken(read?.token ?? '', publicKeys);
    expect(token.valid).toBe(true);
    if (token.valid) expect(token.certificate.number).toBe('W7YVSQJZ4');
  });

  test('a token with one changed character is not genuine', async () => {
    const { token } = certificate.payload;
    const other = token.startsWith('A', 30) ? 'B' : 'A';
    const payload = { ...certificate.payload, token: `${token.slice(0, 30)}${other}${token.slice(31)}` };
    const read = readCertificatePayload(await drawCertificate({ ...certificate, payload }));
    expect(readToken(read?.token ?? '', publicKeys).valid).toBe(false);
  });

  test('letters outside ASCII in a serial survive the file', async () => {
    const payload = {
      ...certificate.payload,
      certificate: { ...certificate.payload.certificate, serial: 'ŁÖΩ 山' },
    };
    expect(
      readCertificatePayload(await drawCertificate({ ...certificate, payload }))?.certificate.serial,
    ).toBe('ŁÖΩ 山');
  });

  test('other files carry none: another document, cut files, other formats', async () => {
    const whole = await drawCertificate(certificate);
    expect(readCertificatePayload(await drawQuote(quote))).toBeNull();
    for (const end of [0, 10, 2000, Math.floor(whole.length / 2), whole.length - 8])
      expect(readCertificatePayload(whole.subarray(0, end))).toBeNull();
    expect(readCertificatePayload(Buffer.from('%PDF-1.7\nstartxref\n0\n%%EOF'))).toBeNull();
    expect(readCertificatePayload(Buffer.from('PK\u0003\u0004'))).toBeNull();
  });

  test('a file whose attachment was blown up is refused, not unpacked', async () => {
    const { deflateSync } = createRequire(import.meta.url)('node:zlib');
    const bomb = deflateSync(Buffer.alloc(50_000_000, 0x20));
    const objects = [
      '<<\n/Names 2 0 R\n>>',
      '<<\n/EmbeddedFiles <<\n/Names [\n(cover.json) 3 0 R\n]\n>>\n>>',
      '<<\n/EF <<\n/F 4 0 R\n>>\n>>',
      `<<\n/Length ${bomb.length}\n/Filter /FlateDecode\n>>\nstream\n${bomb.toString('latin1')}\nendstream`,
    ];
    let body = '%PDF-1.7\n';
    const offsets = objects.map((object, index) => {
      const offset = body.length;
      body += `${index + 1} 0 obj\n${object}\nendobj\n`;
      return `${String(offset).padStart(10, '0')} 00000 n \n`;
    });
    const table = `xref\n0 5\n0000000000 65535 f \n${offsets.join('')}trailer\n<<\n/Root 1 0 R\n>>\nstartxref\n${body.length}\n%%EOF\n`;
    expect(readCertificatePayload(Buffer.from(body + table, 'latin1'))).toBeNull();
  });
});

test('lines that explain the count end as sentences, and a proof without initials names nobody', async () => {
  const counted = ['12 months from 12 Dec 2026 ends 12 Dec 2027'];
  const proof = { ...certificate.proof, technician: { ...certificate.proof.technician, initials: '' } };
  const text = textOf(await drawCertificate({ ...certificate, counted, proof }));
  expect(text).toContain('ends 12 Dec 2027.');
  expect(text).toContain('Proved and signed off on 11 Dec 2026.');
});
