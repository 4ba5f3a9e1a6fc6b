/** Draws certificates and bare documents of the same library in turn, and many certificates in a row; prints JSON. */
import PDFDocument from 'pdfkit';
import { drawCertificate } from '@/lib/documents/certificate';
import { registerFonts } from '@/lib/documents/kit/fonts';
import { type Figure, median } from './figures';
import { sampleCertificate } from './sample-certificate';

const TIMES = 40;
const BATCH = 1000;

const drawn = (i: number) => drawCertificate(sampleCertificate(`SN${i}`));
const certificate = sampleCertificate('SN0');
const words = certificate.sections.flatMap(({ heading, paragraphs, items }) => [
  heading,
  ...paragraphs,
  ...(items?.texts ?? []),
]);

/** The same words in the same fonts on as many pages, set by the library alone: no frames, codes, tags or columns. */
function drawBare(): Promise<number> {
  return new Promise((resolve) => {
    const doc = new PDFDocument({ size: 'A4', margin: 40 });
    let bytes = 0;
    doc.on('data', (chunk: Buffer) => {
      bytes += chunk.length;
    });
    doc.on('end', () => resolve(bytes));
    registerFonts(doc);
    doc.font('next-bold').fontSize(9).text(certificate.title);
    doc.font('mono-regular').text(certificate.number);
    doc.font('next-regular');
    for (const text of words) doc.text(text);
    doc.addPage();
    for (const text of certificate.counted) doc.text(text);
    doc.end();
  });
}

const ours: number[] = [];
const bare: number[] = [];
for (let i = 0; i < TIMES + 5; i += 1) {
  const from = performance.now();
  await drawn(i);
  const between = performance.now();
  await drawBare();
  ours.push(between - from);
  bare.push(performance.now() - between);
}
const [took, tookBare] = [median(ours.slice(5)), median(bare.slice(5))];

const heaps: number[] = [];
const from = performance.now();
for (let i = 1; i <= BATCH; i += 1) {
  await drawn(i);
  if (i % 100 === 0) {
    globalThis.gc?.();
    heaps.push(process.memoryUsage().heapUsed / 2 ** 20);
  }
}
const seconds = (performance.now() - from) / 1000;
const [first = 0, last = 0] = [heaps[0], heaps.at(-1)];
const figures: Figure[] = [
  {
    what: `certificate to a bare document of the same fonts, words and pages, medians of ${TIMES}`,
    value: `${took.toFixed(1)} ms to ${tookBare.toFixed(1)} ms: ${(took / tookBare).toFixed(2)} x`,
    aim: 'at most 1.5 x',
    reached: took / tookBare <= 1.5,
  },
  {
    what: `${BATCH} certificates in a row: time, heap after 100 and after all, collected`,
    value: `${seconds.toFixed(1)} s, ${first.toFixed(0)} MB and ${last.toFixed(0)} MB`,
    aim: 'flat: at most 10 % more',
    reached: last <= first * 1.1,
  },
];
console.log(JSON.stringify(figures));
