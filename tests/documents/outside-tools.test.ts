import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { drawBagLabel, drawBagLabelSheet } from '@/lib/documents/bag-label';
import { drawCertificate } from '@/lib/documents/certificate';
import { drawPackingSlip } from '@/lib/documents/packing-slip';
import { drawQuote } from '@/lib/documents/quote';
import { certificate, label, labelSetting, quote, slip } from '@/tests/documents/demo';
import { everyDocument } from '@/tests/documents/every-document';
import { isInstalled, paintPage, runOn } from '@/tests/documents/tools';

// Programs written by others, where the machine has them; without them the pure checks of the other files still run.
const tools = Object.fromEntries(
  ['qpdf', 'pdfinfo', 'pdftotext', 'pdffonts', 'pdftoppm', 'zbarimg'].map((name) => [
    name,
    isInstalled(name),
  ]),
);

function needs(skip: (condition: boolean, note: string) => void, ...names: string[]): void {
  for (const name of names) skip(tools[name] !== true, `${name} is not on this machine`);
}

describe.each(everyDocument)('$name', ({ draw }) => {
  test('qpdf finds nothing wrong with the file', async ({ skip }) => {
    needs(skip, 'qpdf');
    expect(runOn(await draw(), 'qpdf', (file) => ['--check', file])).toContain(
      'No syntax or stream encoding errors found',
    );
  });

  test('pdfinfo sees a tagged file with a clean tree', async ({ skip }) => {
    needs(skip, 'pdfinfo');
    const bytes = await draw();
    const about = runOn(bytes, 'pdfinfo', (file) => [file]);
    expect(about).toMatch(/Tagged:\s+yes/);
    expect(about).toMatch(/Suspects:\s+no/);
    expect(about).toMatch(/PDF version:\s+1\.7/);
    const tree = runOn(bytes, 'pdfinfo', (file) => ['-struct-text', file]);
    expect(tree).toMatch(/^Document\n/);
    expect(tree).toMatch(/\n\s+H1 \(block\)\n/);
    expect(tree).toMatch(/\n\s+Figure/);
  });

  test('pdffonts sees every font embedded, cut down, and with a way back to text', async ({ skip }) => {
    needs(skip, 'pdffonts');
    const lines = runOn(await draw(), 'pdffonts', (file) => [file])
      .trim()
      .split('\n')
      .slice(2);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line).toMatch(/Identity-H\s+yes yes yes/);
  });
});

test('pdftotext and the tree give the same sentences', async ({ skip }) => {
  needs(skip, 'pdftotext', 'pdfinfo');
  const bytes = await drawCertificate(certificate);
  const flat = runOn(bytes, 'pdftotext', (file) => [file, '-']).replace(/\s+/g, ' ');
  const tree = runOn(bytes, 'pdfinfo', (file) => ['-struct-text', file]);
  // In the tree a sentence is in quoted lines; put together they must read without joined words.
  const spoken = [...tree.matchAll(/"(.*)"/g)]
    .map((line) => line[1])
    .join('')
    .replace(/\s+/g, ' ');
  for (const sentence of [
    'Covered until Sunday 12 December 2027',
    'Months and years end on the same date of the last month',
  ]) {
    expect(flat).toContain(sentence);
    expect(spoken).toContain(sentence);
  }
  expect(spoken).not.toContain('Page 1 of 2');
  expect(flat).toContain('Page 1 of 2');
});

test('text that is shown in part or as missing is whole for a reader', async ({ skip }) => {
  needs(skip, 'pdftotext');
  const read = (bytes: Uint8Array) =>
    runOn(bytes, 'pdftotext', (file) => ['-raw', file, '-']).replace(/\s+/g, ' ');
  expect(read(await drawQuote({ ...quote, customer: 'Zoë 山田' }))).toContain('山田');
  const model = `${'Tidewater field recorder '.repeat(11)}HW-2`;
  expect(read(await drawBagLabel({ ...label, model }, labelSetting))).toContain(model);
});

test('a phone would read the codes from the printed slip and certificate', async ({ skip }) => {
  needs(skip, 'pdftoppm');
  for (const [bytes, text] of [
    [await drawPackingSlip(slip), slip.statusUrl],
    [await drawCertificate(certificate), certificate.checkUrl],
  ] as const) {
    const { width, height, grey } = paintPage(bytes, 1, 200);
    const pixels = new Uint8ClampedArray(width * height * 4).fill(255);
    for (let at = 0; at < width * height; at += 1) pixels.fill(grey[at] ?? 255, at * 4, at * 4 + 3);
    expect(jsQR(pixels, width, height)?.data).toBe(text);
  }
});

test('a scanner reads both codes of a label', async ({ skip }) => {
  needs(skip, 'pdftoppm', 'zbarimg');
  const bytes = await drawBagLabel(label, labelSetting);
  const read = runOn(bytes, 'sh', (file) => [
    '-c',
    `pdftoppm -r 300 -png -singlefile "${file}" "${file}" && zbarimg -q "${file}.png"`,
  ]);
  expect(read).toContain(`QR-Code:${label.code}`);
  expect(read).toContain(`CODE-128:${label.job}`);
});

test('a scanner reads both codes of every label on a sheet, from the chosen place on', async ({ skip }) => {
  needs(skip, 'pdftoppm', 'zbarimg');
  // Numbers with valid check characters (ISO/IEC 7064 MOD 37-2) are not needed: the bars hold any text.
  const jobs = ['JCE9SAWRW', 'J4K7QX29D', 'J0000001T'];
  const labels = jobs.map((number) => ({
    ...label,
    job: number,
    code: `https://quay-alder.example.org/j/${number}`,
  }));
  const bytes = await drawBagLabelSheet(labels, labelSetting, 25);
  const read = runOn(bytes, 'sh', (file) => [
    '-c',
    `pdftoppm -r 300 -png "${file}" "${file}" && zbarimg -q "${file}"-*.png`,
  ]);
  for (const each of labels) {
    expect(read).toContain(`QR-Code:${each.code}`);
    expect(read).toContain(`CODE-128:${each.job}`);
  }
  // Places 26 and 27 of the first sheet, and the third label on a second one.
  expect(runOn(bytes, 'pdfinfo', (file) => [file])).toMatch(/Pages:\s+2/);
});
