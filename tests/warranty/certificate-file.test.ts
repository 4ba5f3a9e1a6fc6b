import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync, inflateSync } from 'node:zlib';
import { beforeAll, describe, expect, it } from 'vitest';
import { readFile } from '@/lib/files/store';
import { keySet } from '@/lib/warranty/key-set';
import { readChain } from '@/lib/warranty/records';
import { rotateSigningKey } from '@/lib/warranty/signing-key';
import { useDatabase } from '@/tests/database';
import { issuedCertificate } from '@/tests/makers/course';
import { makeWorkshop } from '@/tests/makers/workshop';

const NOW = new Date('2026-11-25T09:00:00Z');
const folder = mkdtempSync(path.join(tmpdir(), 'certificate-'));
const paper = path.join(folder, 'certificate.pdf');
const keys = path.join(folder, 'keys.json');

useDatabase();
beforeAll(async () => {
  const world = await makeWorkshop(NOW);
  const chain = await readChain(await issuedCertificate(world, NOW));
  if (!chain) throw new Error('no certificate was issued');
  writeFileSync(paper, await readFile(chain.inForce.fileKey));
  writeFileSync(keys, JSON.stringify(await keySet()));
}, 60_000);

function verify(file: string, keyFile: string) {
  const run = spawnSync(
    process.execPath,
    [
      '--conditions=react-server',
      '--import',
      'tsx',
      'lib/commands/certificate-verify.ts',
      file,
      '--keys',
      keyFile,
    ],
    { encoding: 'utf8' },
  );
  return { status: run.status, text: `${run.stdout}${run.stderr}` };
}

describe('a certificate checked without a connection', () => {
  it('is genuine as issued, and says what was signed', () => {
    const { status, text } = verify(paper, keys);
    expect(text).toContain('Genuine');
    expect(text).toContain('work P12M: 2026-11-25 to the end of 2027-11-25');
    expect(status).toBe(0);
  });

  it('fails when one character of its signed token is another', () => {
    const bytes = readFileSync(paper);
    const forged = path.join(folder, 'forged.pdf');
    writeFileSync(
      forged,
      repack(bytes, (json) => json.replace(/"token": "(.)/, (_, c) => `"token": "${c === 'A' ? 'B' : 'A'}`)),
    );
    const { status, text } = verify(forged, keys);
    expect(text).toContain('The signature does not fit');
    expect(status).toBe(1);
  });

  it('fails when the facts beside the token name a later end', () => {
    const bytes = readFileSync(paper);
    const forged = path.join(folder, 'longer.pdf');
    writeFileSync(
      forged,
      repack(bytes, (json) => json.replace('"endsOn": "2027-11-25"', '"endsOn": "2029-11-25"')),
    );
    const { status, text } = verify(forged, keys);
    expect(text).toContain('other facts');
    expect(status).toBe(1);
  });

  it('fails against the keys of another workshop', async () => {
    const other = path.join(folder, 'other.json');
    writeFileSync(other, JSON.stringify({ keys: [] }));
    expect(verify(paper, other)).toMatchObject({ status: 1 });
  });

  it('stays genuine after the key was changed, by the list published then', async () => {
    const key = await rotateSigningKey(NOW);
    const list = await keySet();
    expect(list.keys).toHaveLength(2);
    expect(list.keys.find((each) => each.kid === key.id)?.until).toBeNull();
    writeFileSync(keys, JSON.stringify(list));
    expect(verify(paper, keys).status).toBe(0);
  });
});

const hasText = spawnSync('pdftotext', ['-v']).error === undefined;
// Where everything is to be checked, a machine without the program fails instead of saying nothing.
const maySkip = process.env['CI'] !== 'true';

// Every section that the lists ask for, word for word: tests/documents/certificate.test.ts.
describe.skipIf(!hasText && maySkip)(
  'what a certificate has to say, in the text of its pages (needs pdftotext)',
  () => {
    // Each list with its source is in lib/warranty/rules/certificate-requirements.ts.
    const text = () =>
      execFileSync('pdftotext', ['-layout', paper, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');

    it.each([
      [
        'Directive (EU) 2019/771 Art. 17(2)(a): remedies by law, free of charge, not affected',
        'free of charge',
      ],
      ['Art. 17(2)(b): name of the guarantor', 'Quay & Alder'],
      ['Art. 17(2)(b): address of the guarantor', '4 Slip Lane'],
      ['Art. 17(2)(b): the country of that address', 'QM1 4QA, United Kingdom'],
      ['Art. 17(2)(c): the procedure to obtain it', 'How to claim'],
      ['Art. 17(2)(d): the goods it covers', 'Tideline HW-2'],
      ['Art. 17(2)(e): the terms, their duration', '12 months'],
      ['BGB § 479(1) no. 5 / 16 CFR 701.3(a)(4): until when', '25 November 2027'],
      ['BGB § 479(1) no. 5: territory', 'the United Kingdom'],
      ['16 CFR 701.3(a)(1): who can use it', 'whoever owns it'],
      ['16 CFR 701.3(a)(2): what is covered', 'USB-C socket replaced'],
      ['16 CFR 701.3(a)(2): what is not covered', 'Damage by liquid after the return'],
      ['16 CFR 701.3(a)(3): what the warrantor will do and pay for', 'Postage'],
      ['16 CFR 701.3(a)(5): where to write', 'bench@quayandalder.example.org'],
      ['CRA 2015 s.30: statutory rights are not touched', 'rights by law'],
    ])('%s', (_requirement, words) => {
      expect(text().toLowerCase()).toContain(words.toLowerCase());
    });
  },
);

/** The same certificate with its attached cover.json changed, and every offset of the file put right again. */
function repack(bytes: Buffer, change: (json: string) => string): Buffer {
  const text = bytes.toString('latin1');
  const at = text.indexOf('/Type /EmbeddedFile');
  const start = text.indexOf('stream\n', at) + 'stream\n'.length;
  const end = text.indexOf('\nendstream', start);
  const json = inflateSync(bytes.subarray(start, end)).toString('utf8');
  const packed = deflateSync(Buffer.from(change(json), 'utf8')).toString('latin1');
  const head = text.slice(0, start);
  const length = /\/Length \d+/;
  const dictionary = head.slice(at).replace(length, `/Length ${packed.length}`);
  const whole = head.slice(0, at) + dictionary + packed + text.slice(end);
  const grown = whole.length - text.length;
  const moved = (offset: string) => Number(offset) + (Number(offset) > at ? grown : 0);
  return Buffer.from(
    whole
      .replace(/^(\d{10}) 00000 n/gm, (_, offset) => `${String(moved(offset)).padStart(10, '0')} 00000 n`)
      .replace(/startxref\n(\d+)/, (_, offset) => `startxref\n${moved(offset)}`),
    'latin1',
  );
}
