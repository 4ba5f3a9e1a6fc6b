import { formatDay } from '@/lib/calendar/format';
import { qrFigure } from '@/lib/documents/kit/codes';
import { docket, type Fact } from '@/lib/documents/kit/docket';
import { type Column, flowText } from '@/lib/documents/kit/flow';
import { mm, styles } from '@/lib/documents/kit/ink';
import { flowLink } from '@/lib/documents/kit/link';
import { closePage, openPage, type PageFacts, type Setting, type Workshop } from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import { table } from '@/lib/documents/kit/table';
import type { Paper, PaperLine, Party } from '@/lib/invoices/rules/paper';
import type { WaysToPay } from '@/lib/invoices/rules/ways-to-pay';
import { formatMoney } from '@/lib/money/amount';
import { rateInWords, taxInWords } from '@/lib/money/rate';
import { isCountryCode } from '@/lib/numbers/countries';
import { showNumber } from '@/lib/numbers/job-number';
import { countryName } from '@/lib/parcels/rules/country-abroad';

export type InvoiceData = {
  setting: Setting;
  workshop: Workshop;
  paper: Omit<Paper, 'lines'> & { lines: readonly (PaperLine & { amount: number })[] };
  /** Whether the agreed amounts of the lines include the tax. */
  isGross: boolean;
  /** Stored job number, without separators. */
  job: string;
  unit: { model: string; serial: string };
  /** Address of the job's status page, for the QR code. */
  statusUrl: string;
  /** How what is left is paid; null when nothing is, and on a credit note. */
  ways: WaysToPay | null;
};

type Drawing = InvoiceData & { money: (minor: number) => string; isCredit: boolean };

/** An invoice or a credit note: both parties, what for, the tax by rate, and how it is paid or comes back. */
export function drawInvoice(data: InvoiceData): Promise<Uint8Array> {
  const { locale } = data.setting;
  const { paper } = data;
  const isCredit = paper.kind === 'credit-note';
  const kind = isCredit ? 'Credit note' : 'Invoice';
  const money = (minor: number): string => formatMoney(minor, paper.currency, locale);
  const o: Drawing = { ...data, money, isCredit };
  const facts: PageFacts = {
    title: `${kind} ${paper.number}`,
    kind,
    number: paper.number,
    workshop: data.workshop,
  };
  const sheet = openPage(data.setting, facts);
  const job = showNumber(data.job);
  docket(sheet, {
    kind,
    number: paper.number,
    code: {
      text: data.statusUrl,
      alt: `QR code that opens the status of job ${job}`,
      caption: 'Scan to see where your unit is.',
    },
    title: kind,
    notice: notice(o),
    facts: factsOf(o),
  });
  section(sheet, 'From and to', (part, column) => {
    flowText(sheet, part, 'P', `From: ${partyLine(paper.seller, o.setting.locale)}`, column, { after: 2 });
    if (paper.seller.taxNumber !== '')
      flowText(sheet, part, 'P', `${paper.seller.taxName} number: ${paper.seller.taxNumber}`, column);
    flowText(sheet, part, 'P', `To: ${partyLine(paper.buyer, o.setting.locale)}`, column);
  });
  if (paper.reason !== '')
    section(sheet, isCredit ? 'Why' : 'Note', (part, column) =>
      flowText(sheet, part, 'P', paper.reason, column),
    );
  section(sheet, isCredit ? 'What is taken off' : 'What it is for', (part, column) => {
    drawLines(sheet, part, column, o);
  });
  section(sheet, 'Sums and tax', (part, column) => {
    drawTax(sheet, part, column, o);
    drawSums(sheet, part, column, o);
  });
  if (data.ways) drawWays(sheet, data.ways, o);
  if (isCredit)
    section(sheet, 'What happens next', (part, column) =>
      flowText(
        sheet,
        part,
        'P',
        'This amount is set off against the invoice. If you have paid more than is left of it, we give the rest back the way it came.',
        column,
      ),
    );
  return closePage(sheet, facts);
}

function notice({ paper, isCredit, money, setting }: Drawing): string {
  if (isCredit) return `${money(paper.payable)} taken off invoice ${paper.corrects?.number ?? ''}`;
  const left = paper.payable - paper.prepaid;
  if (left === 0) return `Paid: ${money(paper.payable)}`;
  return `${money(left)} to pay by ${formatDay(paper.dueOn, setting.locale, 'weekday')}`;
}

function factsOf({ paper, isCredit, setting, job, unit }: Drawing): Fact[] {
  const day = (text: Paper['issuedOn']): string => formatDay(text, setting.locale, 'short');
  return [
    { name: 'To', value: paper.buyer.name },
    { name: 'Unit', value: unit.model },
    { name: 'Serial', value: unit.serial, face: 'mono' },
    { name: 'Job', value: showNumber(job), face: 'mono' },
    { name: 'Issued', value: day(paper.issuedOn) },
    ...(paper.suppliedOn === null ? [] : [{ name: 'Work done', value: day(paper.suppliedOn) }]),
    ...(isCredit && paper.corrects
      ? [{ name: 'On invoice', value: `${paper.corrects.number} of ${day(paper.corrects.issuedOn)}` }]
      : [{ name: 'Pay by', value: formatDay(paper.dueOn, setting.locale, 'weekday') }]),
  ];
}

function partyLine(party: Party, locale: string): string {
  const place = [party.town, party.postcode].filter((text) => text !== '').join(' ');
  const country = isCountryCode(party.country) ? countryName(party.country, locale) : party.country;
  return [party.name, ...party.addressLines, place, country].filter((text) => text !== '').join(', ');
}

/** Lines without tax, as the tax law wants them, and with it where the price was agreed that way. */
function drawLines(sheet: Sheet, part: Element, column: Column, o: Drawing): void {
  const { paper, money, isGross } = o;
  const { taxName } = paper.seller;
  const columns = [
    { head: 'For', share: 6 },
    { head: taxName, share: 2 },
    { head: `Without ${taxName}`, share: 3, align: 'right', face: 'mono' },
    ...(isGross ? [{ head: `With ${taxName}`, share: 3, align: 'right', face: 'mono' } as const] : []),
  ] as const;
  const rows = paper.lines.map((line) => ({
    cells: [line.description, rateInWords(line), money(line.net), ...(isGross ? [money(line.amount)] : [])],
  }));
  table(sheet, part, columns, rows, column);
}

function drawTax(sheet: Sheet, part: Element, column: Column, { paper, money }: Drawing): void {
  const { taxName, taxExemptReason } = paper.seller;
  const columns = [
    { head: 'Tax', share: 6 },
    { head: 'On', share: 3, align: 'right', face: 'mono' },
    { head: 'Amount', share: 3, align: 'right', face: 'mono' },
  ] as const;
  const rows = paper.breakdown.map((each) => ({
    cells: [taxInWords(each, taxName), money(each.base), money(each.tax)],
  }));
  table(sheet, part, columns, rows, column, { style: styles.small, after: 8 });
  if (taxExemptReason !== '' && paper.breakdown.some((each) => each.category === 'E'))
    flowText(sheet, part, 'P', `Exempt because: ${taxExemptReason}`, column, {
      style: styles.small,
      after: 8,
    });
}

function drawSums(sheet: Sheet, part: Element, column: Column, o: Drawing): void {
  const { paper, money, isCredit } = o;
  const columns = [
    { head: 'Together', share: 9 },
    { head: paper.currency, share: 4, align: 'right', face: 'mono' },
  ] as const;
  const left = paper.payable - paper.prepaid;
  const rows = [
    { cells: [`Without ${paper.seller.taxName}`, money(paper.net)] },
    { cells: [paper.seller.taxName, money(paper.tax)] },
    ...(paper.rounding === 0 ? [] : [{ cells: ['Rounding to the agreed price', money(paper.rounding)] }]),
    { cells: [isCredit ? 'Taken off' : 'Total', money(paper.payable)], total: true },
    ...(paper.prepaid === 0
      ? []
      : [
          { cells: ['Paid before this invoice', money(-paper.prepaid)] },
          { cells: ['Left to pay', money(left)], total: true },
        ]),
  ];
  table(sheet, part, columns, rows, column);
}

// 33 mm for a code of at most 69 modules with its quiet zone: 0.43 mm a module, which phones read.
const CODE = mm(33);

function drawWays(sheet: Sheet, ways: WaysToPay, o: Drawing): void {
  section(sheet, 'How to pay', (part, column) => {
    const top = sheet.y;
    const code = ways.bank?.qr ?? null;
    if (code) sheet.room(CODE + 16);
    const from = Math.max(sheet.y, top);
    const beside = code ? { x: column.x, width: column.width - CODE - 14 } : column;
    const page = sheet.pages;
    for (const line of bankLines(ways, o)) flowText(sheet, part, 'P', line, beside, { after: 2 });
    if (ways.link)
      flowLink(
        sheet,
        part,
        {
          before: 'Pay online:',
          label: ways.link,
          url: ways.link,
          description: `Pay ${o.money(ways.amount)} online`,
        },
        beside,
      );
    if (ways.text) flowText(sheet, part, 'P', ways.text, beside);
    if (!code || sheet.pages !== page) return;
    const at = sheet.y;
    const box = { x: column.x + column.width - CODE, y: from, size: CODE };
    qrFigure(sheet, part, code, 'QR code that fills in the bank transfer in a banking app', box);
    sheet.y = from + CODE + 2;
    const under = { x: box.x, width: CODE };
    flowText(sheet, part, 'P', 'Scan with your banking app.', under, { style: styles.small });
    sheet.y = Math.max(sheet.y, at);
  });
}

function bankLines(ways: WaysToPay, o: Drawing): string[] {
  const { bank } = ways;
  if (!bank) return [`Amount ${o.money(ways.amount)}, reference ${ways.reference}.`];
  return [
    `Bank transfer to ${bank.holder}`,
    `IBAN ${bank.iban}${bank.bic ? `, BIC ${bank.bic}` : ''}`,
    `Amount ${o.money(ways.amount)}, reference ${bank.creditorReference ?? ways.reference}`,
  ];
}
