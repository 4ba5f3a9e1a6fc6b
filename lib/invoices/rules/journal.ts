import type { Day } from '@/lib/calendar/day';
import { guardText } from '@/lib/catalogue/rules/list-cells';
import { decimalText, safeSum } from '@/lib/money/amount';
import type { TaxBreakdown } from '@/lib/money/tax';
import { isForPrice } from './balance';

export type JournalPaper = {
  kind: 'invoice' | 'credit-note';
  number: string;
  corrects: string | null;
  on: Day;
  job: string;
  customer: string;
  currency: string;
  breakdown: readonly TaxBreakdown[];
  rounding: number;
};

export type JournalPayment = {
  on: Day;
  /** the day it was typed in, which may be after the journal of its month was taken */
  enteredOn: Day;
  job: string;
  customer: string;
  currency: string;
  /** minor units; below zero was given back */
  amount: number;
  purpose: string;
  method: string;
  reference: string;
};

export const JOURNAL_HEAD = [
  'Date',
  'Kind',
  'Number',
  'Corrects',
  'Job',
  'Customer',
  'Tax category',
  'Rate %',
  'Net',
  'Tax',
  'Rounding',
  'Total',
  'Received',
  'Method',
  'Reference',
  'Currency',
  'Entered on',
] as const;

/**
 * True once a month's journal can be whole: while the month runs, more is to come of it.
 *
 * isMonthOver('2026-11', 2026-12-01) -> true; on 2026-11-30 -> false
 */
export function isMonthOver(month: string, today: Day): boolean {
  return month < today.slice(0, 7);
}

/**
 * The rows of a bookkeeper's journal, in the order of their days: for every invoice and credit note one row for each
 * tax rate and one for its rounding, for every payment one. Credit notes and money given back are below zero. The totals of a
 * document's rows come to what is payable on it, so that the columns add up to the month's figures.
 */
export function journalRows(
  papers: readonly JournalPaper[],
  payments: readonly JournalPayment[],
): string[][] {
  const rows = [
    ...papers.map((paper) => ({ on: paper.on, key: `1${paper.number}`, cells: paperRows(paper) })),
    ...payments.map((payment, place) => ({
      on: payment.on,
      key: `2${String(place).padStart(9, '0')}`,
      cells: [paymentRow(payment)],
    })),
  ];
  return rows.toSorted((a, b) => compare(a.on, b.on) || compare(a.key, b.key)).flatMap((row) => row.cells);
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function paperRows(paper: JournalPaper): string[][] {
  const sign = paper.kind === 'invoice' ? 1 : -1;
  const amount = (minor: number) => decimalText(minor === 0 ? 0 : sign * minor, paper.currency);
  const row = (o: { category: string; rate: string; net: number; tax: number; rounding: number }) => [
    paper.on,
    paper.kind === 'invoice' ? 'invoice' : 'credit note',
    paper.number,
    paper.corrects ?? '',
    paper.job,
    guardText(paper.customer),
    o.category,
    o.rate,
    amount(o.net),
    amount(o.tax),
    amount(o.rounding),
    amount(safeSum([o.net, o.tax, o.rounding])),
    '',
    '',
    '',
    paper.currency,
    paper.on,
  ];
  return [
    ...paper.breakdown.map((part) =>
      row({
        category: part.category,
        rate: String(part.rateBps / 100),
        net: part.base,
        tax: part.tax,
        rounding: 0,
      }),
    ),
    ...(paper.rounding === 0
      ? []
      : [row({ category: '', rate: '', net: 0, tax: 0, rounding: paper.rounding })]),
  ];
}

function paymentRow(payment: JournalPayment): string[] {
  return [
    payment.on,
    isForPrice(payment) ? (payment.amount < 0 ? 'given back' : 'payment') : 'postage of a claim',
    '',
    '',
    payment.job,
    guardText(payment.customer),
    '',
    '',
    '',
    '',
    '',
    '',
    decimalText(payment.amount, payment.currency),
    guardText(payment.method),
    guardText(payment.reference),
    payment.currency,
    payment.enteredOn,
  ];
}
