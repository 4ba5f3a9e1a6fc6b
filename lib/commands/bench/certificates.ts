/** Draws certificates and bare documents of the same library in turn, and then many certificates in a row. */
import PDFDocument from 'pdfkit';
import { drawCertificate } from '@/lib/documents/certificate';
import { registerFonts } from '@/lib/documents/kit/fonts';
import { type Figure, median, medianRatio } from './figures';
import { answer } from './run-step';
import { sampleCertificate } from './sample-certificate';

const TIMES = 40;
const WARM = 5;
const MOST = 1.5;
const BATCH = Number(process.argv[2] ?? 1000);

const certificate = sampleCertificate('SN0');
const words = certificate.sections.flatMap(({ heading, paragraphs, items }) => [
  heading,
  ...paragraphs,
  ...(items?.texts ?? []),
]);

/** The same words in the same fonts on as many pages, set by the library alone: no frames, codes, tags or columns. */
function drawBare(pages: number): Promise<Buffer> {
  return new Promise((resolve) => {
    const doc = new PDFDocument({ size: 'A4', margin: 40 });
    const chunks: Buffer[] = [];
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    registerFonts(doc);
    doc.font('next-bold').fontSize(8).text(certificate.title);
    doc.font('mono-regular').text(certificate.number);
    doc.font('mono-bold').text(certificate.number);
    doc.font('next-regular');
    for (const text of words) doc.text(text);
    for (let page = 1; page < pages; page += 1) doc.addPage();
    for (const text of certificate.counted) doc.text(text);
    doc.end();
  });
}

/** What the two have to have in common: pages and embedded fonts. */
function sizeOf(pdf: Uint8Array): { pages: number; fonts: number } {
  const text = Buffer.from(pdf).toString('latin1');
  const count = (of: RegExp) => [...text.matchAll(of)].length;
  return { pages: count(/\/Type \/Page\b/g), fonts: count(/\/FontFile2 /g) };
}

const size = sizeOf(await drawCertificate(certificate));
const bareSize = sizeOf(await drawBare(size.pages));
if (size.pages !== bareSize.pages || size.fonts !== bareSize.fonts)
  throw new Error(`not of the same size: ${JSON.stringify([size, bareSize])}`);

const ours: number[] = [];
const bare: number[] = [];
for (let i = 0; i < TIMES + WARM; i += 1) {
  const from = performance.now();
  await drawCertificate(sampleCertificate(`SN${i}`));
  const between = performance.now();
  await drawBare(size.pages);
  ours.push(between - from);
  bare.push(performance.now() - between);
}
const ratio = medianRatio(ours.slice(WARM), bare.slice(WARM));

const heaps: number[] = [];
const from = performance.now();
for (let i = 1; i <= BATCH; i += 1) {
  await drawCertificate(sampleCertificate(`SN${i}`));
  if (i % 100 > 0) continue;
  globalThis.gc?.();
  heaps.push(process.memoryUsage().heapUsed / 2 ** 20);
}
const seconds = (performance.now() - from) / 1000;
const [first = 0, last = 0] = [heaps[0], heaps.at(-1)];
const figures: Figure[] = [
  {
    what: `certificate to a bare document of ${size.pages} pages and ${size.fonts} fonts`,
    value: `${median(ours.slice(WARM)).toFixed(1)} to ${median(bare.slice(WARM)).toFixed(1)} ms, ${ratio.toFixed(2)} x`,
    aim: `at most ${MOST} x`,
    reached: ratio <= MOST,
  },
  {
    what: `${BATCH} certificates in a row, heap after 100 and after all`,
    value: `${seconds.toFixed(0)} s, ${first.toFixed(0)} and ${last.toFixed(0)} MB`,
    aim: 'at most 10 % more',
    reached: last <= first * 1.1,
  },
];
answer(figures);
