import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { docket } from '@/lib/documents/kit/docket';
import { flowList, flowText } from '@/lib/documents/kit/flow';
import { flowLink } from '@/lib/documents/kit/link';
import { closePage, openPage, type PageFacts, type Setting, type Workshop } from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import { runOfStamps, type Stamp } from '@/lib/documents/kit/stamps';
import { drawPrice, type Price, withTax } from '@/lib/documents/money-sheet';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';

export type QuoteData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored quote number, without separators. */
  number: string;
  revision: number;
  /** Stored job number, once there is a job. */
  job: string | null;
  customer: string;
  unit: { model: string; serial: string };
  issuedOn: Day;
  validUntil: Day;
  /** Private link where the customer says yes or no; null where no link opens it any more. */
  answerUrl: string | null;
  stamps: readonly Stamp[];
  found: readonly string[];
  /** What is proposed to be done, how long it takes, and what else to know; none where it was told before. */
  proposed: readonly string[];
  price: Price;
  /** What an earlier revision came to with tax, in minor units, when this one changes it. */
  before: { revision: number; gross: number } | null;
  ifYes: readonly string[];
  ifNo: readonly string[];
  /** What became of the price; null while it waits for its answer. */
  outcome: string | null;
};

function changeSentence(data: QuoteData): string | null {
  if (!data.before) return null;
  const { locale } = data.setting;
  const money = (minor: number): string => formatMoney(minor, data.price.currency, locale);
  const { gross } = data.price.totals;
  const step = gross - data.before.gross;
  if (step === 0) return `The total stays as in revision ${data.before.revision}: ${money(gross)}.`;
  const word = step > 0 ? 'more' : 'less';
  return `Revision ${data.before.revision} came to ${money(data.before.gross)}. This one comes to ${money(gross)}: ${money(Math.abs(step))} ${word}.`;
}

/** A quote, or a changed price once work has begun: what was found, what it costs, and what happens on yes and on no. */
export function drawQuote(data: QuoteData): Promise<Uint8Array> {
  const { locale } = data.setting;
  const number = showNumber(data.number);
  const facts: PageFacts = {
    title: `Quote ${number}, revision ${data.revision}`,
    kind: 'Quote',
    number,
    workshop: data.workshop,
  };
  const sheet = openPage(data.setting, facts);
  const change = changeSentence(data);
  docket(sheet, {
    kind: 'Quote',
    number,
    code: data.answerUrl
      ? {
          text: data.answerUrl,
          alt: `QR code that opens quote ${number}${data.outcome ? '' : ' to answer it'}`,
          caption: data.outcome ? 'Scan to see where it stands.' : 'Scan to say yes or no.',
        }
      : null,
    title: change ? 'Changed price' : 'Quote',
    notice: withTax(formatMoney(data.price.totals.gross, data.price.currency, locale), data.price.taxName),
    facts: [
      { name: 'For', value: data.customer },
      { name: 'Unit', value: data.unit.model },
      { name: 'Serial', value: data.unit.serial, face: 'mono' },
      ...(data.job ? [{ name: 'Job', value: showNumber(data.job), face: 'mono' } as const] : []),
      { name: 'Issued', value: `${formatDay(data.issuedOn, locale, 'short')}, revision ${data.revision}` },
      { name: 'Valid until', value: formatDay(data.validUntil, locale, 'weekday') },
    ],
  });
  runOfStamps(sheet, data.stamps, locale);
  for (const [heading, paragraphs] of [
    ['What we found', data.found],
    ['What we propose', data.proposed],
  ] as const) {
    if (paragraphs.length === 0) continue;
    section(sheet, heading, (part, column) => {
      for (const paragraph of paragraphs) flowText(sheet, part, 'P', paragraph, column);
    });
  }
  section(sheet, 'What it costs', (part, column) => {
    if (change) flowText(sheet, part, 'P', change, column, { after: 6 });
    drawPrice(sheet, part, data.price, { locale, column, totalWord: 'To pay' });
  });
  for (const [heading, steps] of [
    ['If you say yes', data.ifYes],
    ['If you say no', data.ifNo],
  ] as const) {
    if (steps.length > 0)
      section(sheet, heading, (part, column) =>
        flowList(sheet, part, steps, steps.length > 1 ? 'number' : 'dash', column),
      );
  }
  section(sheet, 'Your answer', (part, column) => {
    const by = formatDay(data.validUntil, locale, 'weekday');
    if (data.outcome !== null) flowText(sheet, part, 'P', data.outcome, column);
    else if (data.answerUrl === null)
      flowText(sheet, part, 'P', `Answer by ${by}, on the private page we wrote to you about.`, column);
    else {
      const before = `Answer by ${by}. Scan the code above, or open this private link:`;
      const description = `Answer quote ${number} online`;
      flowLink(sheet, part, { before, label: data.answerUrl, url: data.answerUrl, description }, column);
    }
  });
  return closePage(sheet, facts);
}
