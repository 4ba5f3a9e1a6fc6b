import type { Day } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { docket } from '@/lib/documents/kit/docket';
import { flowText } from '@/lib/documents/kit/flow';
import { closePage, openPage, type PageFacts, type Setting, type Workshop } from '@/lib/documents/kit/page';
import { section } from '@/lib/documents/kit/section';
import { runOfStamps, type Stamp } from '@/lib/documents/kit/stamps';
import { drawPrice, type Price } from '@/lib/documents/money-sheet';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';

export type ReceiptData = {
  setting: Setting;
  workshop: Workshop;
  /** Stored job number, without separators. */
  job: string;
  /** Number of the invoice that was paid, when one was issued. */
  invoice: string | null;
  customer: string;
  unit: { model: string; serial: string };
  /** Address of the job's status page, for the QR code. */
  statusUrl: string;
  stamps: readonly Stamp[];
  /** What is to be paid, less what credit notes took off; null while no price is agreed. */
  price: Price | null;
  currency: string;
  /** What credit notes took off, minor units. */
  credited: number;
  payments: readonly { amount: number; on: Day; method: string; reference: string | null }[];
  /** What happens next and when. */
  next: readonly string[];
};

/** A receipt for what was paid on a job: payments, what they were for, and the tax in them. */
export function drawReceipt(data: ReceiptData): Promise<Uint8Array> {
  const { locale } = data.setting;
  const { price, currency } = data;
  const money = (minor: number): string => formatMoney(minor, currency, locale);
  const number = showNumber(data.job);
  const paid = data.payments.reduce((sum, payment) => sum + payment.amount, 0);
  const open = price === null ? null : price.totals.gross - paid;
  const facts: PageFacts = {
    title: `Receipt for job ${number}`,
    kind: 'Receipt',
    number,
    workshop: data.workshop,
  };
  const sheet = openPage(data.setting, facts);
  docket(sheet, {
    kind: 'Job',
    number,
    code: {
      text: data.statusUrl,
      alt: `QR code that opens the status of job ${number}`,
      caption: 'Scan to see where your unit is.',
    },
    title: 'Receipt',
    notice: open !== null && open <= 0 ? `Paid in full: ${money(paid)}` : `Paid so far: ${money(paid)}`,
    facts: [
      { name: 'From', value: data.customer },
      { name: 'Unit', value: data.unit.model },
      { name: 'Serial', value: data.unit.serial, face: 'mono' },
      ...(data.invoice ? [{ name: 'Invoice', value: data.invoice, face: 'mono' } as const] : []),
    ],
  });
  runOfStamps(sheet, data.stamps, locale);
  section(sheet, 'What you paid', (part, column) => {
    for (const payment of data.payments) {
      const by = payment.reference ? `${payment.method}, reference ${payment.reference}` : payment.method;
      const what = payment.amount < 0 ? `${money(-payment.amount)} given back` : money(payment.amount);
      flowText(sheet, part, 'P', `${what} on ${formatDay(payment.on, locale, 'short')}: ${by}.`, column, {
        after: 2,
      });
    }
    if (data.credited > 0)
      flowText(sheet, part, 'P', `Taken off by credit note: ${money(data.credited)}.`, column, { after: 2 });
    if (open === null)
      flowText(sheet, part, 'P', 'It counts towards the price that is still to be agreed.', column);
    else if (open > 0) flowText(sheet, part, 'P', `Still to pay: ${money(open)}.`, column);
    else if (open < 0)
      flowText(sheet, part, 'P', `Paid more than asked: ${money(-open)}. We give it back.`, column);
  });
  if (price)
    section(sheet, 'What it was for', (part, column) =>
      drawPrice(sheet, part, price, { locale, column, totalWord: 'Total' }),
    );
  if (data.next.length > 0) {
    section(sheet, 'What happens next', (part, column) => {
      for (const text of data.next) flowText(sheet, part, 'P', text, column, { after: 2 });
    });
  }
  return closePage(sheet, facts);
}
