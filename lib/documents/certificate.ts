import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { describePeriod } from '@/lib/calendar/period';
import { attachCover, type CoverPayload } from '@/lib/documents/cover-attachment';
import type { ColumnBlock, ColumnSection } from '@/lib/documents/kit/column-rows';
import { flowColumns } from '@/lib/documents/kit/columns';
import { docket } from '@/lib/documents/kit/docket';
import { type Column, flowText } from '@/lib/documents/kit/flow';
import { styles } from '@/lib/documents/kit/ink';
import { flowLink } from '@/lib/documents/kit/link';
import {
  closePage,
  drawLargest,
  openPage,
  type PageFacts,
  type Setting,
  type Workshop,
} from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import { runOfStamps, type Stamp } from '@/lib/documents/kit/stamps';
import { table } from '@/lib/documents/kit/table';
import { drawProof, type Proof } from '@/lib/documents/proof';
import { showNumber } from '@/lib/numbers/job-number';
import type { Section } from '@/lib/warranty/rules/certificate-facts';

export type CertificateData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored certificate number, without separators. */
  number: string;
  revision: number;
  /** The revision this one takes the place of. */
  replaces: number | null;
  issuedOn: Day;
  /** Stored job number. */
  job: string;
  unit: { model: string; serial: string };
  /** Address with the signed token, for the QR code. */
  checkUrl: string;
  /** Where the number can be typed instead, as people would type it. */
  checkPage: string;
  /** Last day on which any line covers. */
  coveredUntil: Day;
  lastClaimDay: Day;
  cover: readonly { what: string /** ISO 8601 duration. */; term: string; from: Day; until: Day }[];
  /** One line each on how the ends were counted. */
  counted: readonly string[];
  /** What certificate-text.ts says, in reading order; its section 'cover' is drawn as the table of cover lines. */
  title: string;
  sections: readonly Section[];
  stamps: readonly Stamp[];
  proof: Proof;
  payload: CoverPayload;
};

/**
 * The certificate: page one the promise, page two the work and the readings behind it. Text that is too long for that
 * is set a little smaller, and beyond that runs on, with the work right behind it.
 */
export function drawCertificate(data: CertificateData): Promise<Uint8Array> {
  const number = showNumber(data.number);
  const facts: PageFacts = {
    title: `Certificate ${number}, revision ${data.revision}`,
    kind: 'Certificate',
    number,
    workshop: data.workshop,
  };
  return drawLargest((pass) => {
    const sheet = openPage(data.setting, facts, pass);
    const isUnbroken = drawPromise(sheet, data, number);
    const promisePages = sheet.pages;
    // Behind a promise that runs on, the work follows where it ends: a third page for a quarter of the second helps nobody.
    if (promisePages === 1) sheet.newPage();
    drawProof(sheet, data.proof, data.setting.locale);
    drawCheck(sheet, data, number);
    attachCover(sheet, data.payload, data.setting.made);
    const fit = promisePages > 1 ? 'no' : sheet.pages === 2 && isUnbroken ? 'whole' : 'partly';
    return { fit, close: () => closePage(sheet, facts) };
  });
}

// The docket itself says who promises and for which unit.
const inDocket: ReadonlySet<Section['key']> = new Set(['guarantor', 'unit']);

function drawPromise(sheet: Sheet, data: CertificateData, number: string): boolean {
  const { locale } = data.setting;
  const promisor = [data.workshop.name, ...data.workshop.address].join(', ');
  const issued = `${formatDay(data.issuedOn, locale, 'short')}, revision ${data.revision}`;
  docket(sheet, {
    kind: 'Certificate',
    number,
    code: {
      text: data.checkUrl,
      alt: `QR code that checks whether certificate ${number} is genuine`,
      caption: 'Scan to check that this is genuine, or to open a claim.',
      size: 94,
    },
    title: data.title,
    notice: `Covered until ${formatDay(data.coveredUntil, locale, 'weekday')}`,
    facts: [
      { name: 'Unit', value: sectionText(data, 'unit', data.unit.model) },
      { name: 'Serial', value: data.unit.serial, face: 'mono' },
      { name: 'Promised by', value: sectionText(data, 'guarantor', promisor) },
      { name: 'Last day to claim', value: formatDay(data.lastClaimDay, locale, 'weekday') },
      {
        name: 'Issued',
        value: data.replaces === null ? issued : `${issued}, replaces revision ${data.replaces}`,
      },
    ],
  });
  runOfStamps(sheet, data.stamps, locale);
  const cover = data.sections.find((text) => text.key === 'cover');
  section(sheet, cover?.heading ?? 'What is covered', (part, column) => drawCover(sheet, part, data, column));
  const told = data.sections.filter((text) => !inDocket.has(text.key) && text.key !== 'cover');
  return flowColumns(sheet, told.map(columnSection));
}

function columnSection({ heading, paragraphs, items }: Section): ColumnSection {
  const list: ColumnBlock[] = items
    ? [{ kind: 'list', items: items.texts, mark: items.numbered ? 'number' : 'dash' }]
    : [];
  return { heading, blocks: [{ kind: 'text', content: paragraphs.join(' ') }, ...list] };
}

function sectionText(data: CertificateData, key: Section['key'], otherwise: string): string {
  return data.sections.find((text) => text.key === key)?.paragraphs.join(' ') ?? otherwise;
}

function drawCover(sheet: Sheet, part: Element, data: CertificateData, column: Column): void {
  const { locale } = data.setting;
  const columns = [
    { head: 'What', share: 4.4 },
    { head: 'Term', share: 1.9 },
    { head: 'From', share: 2.2 },
    { head: 'Until', share: 2.2 },
  ];
  const rows = data.cover.map((line) => ({
    cells: [
      line.what,
      describePeriod(line.term),
      formatDay(line.from, locale, 'short'),
      formatDay(line.until, locale, 'short'),
    ],
  }));
  table(sheet, part, columns, rows, column, { after: 4 });
  const told = data.sections.find((text) => text.key === 'cover')?.paragraphs ?? [];
  const counted = data.counted.map((line) => (/[.!?]$/.test(line) ? line : `${line}.`));
  for (const line of [...told, ...counted])
    flowText(sheet, part, 'P', line, column, { style: styles.small, after: 1 });
}

function drawCheck(sheet: Sheet, data: CertificateData, number: string): void {
  section(sheet, 'Check that it is genuine', (part, column) => {
    flowLink(
      sheet,
      part,
      {
        before: 'Scan the code on page 1, or type the number here:',
        label: data.checkPage,
        url: data.checkUrl,
        description: `Check certificate ${number} online`,
      },
      column,
    );
    const kept =
      'This file also carries the signed cover as an attachment named cover.json, so that it can be checked without a connection. A copy with one changed digit fails.';
    flowText(sheet, part, 'P', kept, column, { style: styles.small });
  });
}
