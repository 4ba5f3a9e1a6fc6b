import { type Column, flowText } from '@/lib/documents/kit/flow';
import { styles } from '@/lib/documents/kit/ink';
import type { Element, Sheet } from '@/lib/documents/kit/sheet';
import { table } from '@/lib/documents/kit/table';
import { formatMoney } from '@/lib/money/amount';
import { taxInWords } from '@/lib/money/rate';
import type { Totals } from '@/lib/money/tax';

export type PricedLine = {
  description: string;
  /** '3', '1.5 h'; empty where one is meant. */
  quantity: string;
  /** Minor units, with or without tax as `mode` says; a discount is negative. */
  amount: number;
};

export type Price = {
  currency: string;
  /** Whether the amounts of the lines exclude or include tax. */
  mode: 'net' | 'gross';
  lines: readonly PricedLine[];
  totals: Totals;
  /** What an invoice adds to net and tax to come to the agreed price, minor units (EN 16931 BT-114); absent: nothing. */
  rounding?: number;
  /** What the tax is called here: 'VAT', 'Tax'; null where the workshop charges none. */
  taxName: string | null;
  /** The workshop's number with the tax office. */
  taxNumber: string | null;
  /** Sentences the tax needs, such as why a line is exempt. */
  taxNotes: readonly string[];
};

/** An amount or a word with the remark that tax is in it, where there is a tax: '£64.00 with VAT'. */
export function withTax(text: string, taxName: string | null): string {
  return taxName === null ? text : `${text} with ${taxName}`;
}

export type PricePlace = { locale: string; column: Column; totalWord: string };

/** The lines of a price with its total, then what tax is in it by rate. */
export function drawPrice(sheet: Sheet, parent: Element, price: Price, place: PricePlace): void {
  const money = (minor: number): string => formatMoney(minor, price.currency, place.locale);
  const { totals, taxName } = price;
  // A column that no line fills says nothing.
  const isCounted = price.lines.some((line) => line.quantity !== '');
  const cells = (what: string, quantity: string, amount: string) =>
    isCounted ? [what, quantity, amount] : [what, amount];
  const columns = [
    { head: 'For', share: isCounted ? 7 : 9 },
    ...(isCounted ? [{ head: 'Quantity', share: 2 }] : []),
    { head: amountHead(price), share: 3, align: 'right', face: 'mono' },
  ] as const;
  const rows = [
    ...price.lines.map((line) => ({ cells: cells(line.description, line.quantity, money(line.amount)) })),
    ...netRows(price, money).map(([what, amount]) => ({ cells: cells(what, '', amount) })),
    { cells: cells(withTax(place.totalWord, taxName), '', money(totals.gross)), total: true },
  ];
  table(sheet, parent, columns, rows, place.column, { after: 10 });
  if (taxName !== null) drawTax(sheet, parent, price, taxName, money, place.column);
  for (const note of price.taxNotes)
    flowText(sheet, parent, 'P', note, place.column, { style: styles.small, after: 2 });
}

function amountHead(price: Price): string {
  if (price.taxName === null) return 'Amount';
  return price.mode === 'gross' ? `With ${price.taxName}` : `Without ${price.taxName}`;
}

const ROUNDING = 'Rounding to the agreed price';

/** Where the lines are without tax, their sum and the tax stand between them and the total. */
function netRows(
  { mode, taxName, totals, rounding = 0 }: Price,
  money: (minor: number) => string,
): [string, string][] {
  if (mode === 'gross' || taxName === null) return [];
  const taxed = totals.breakdown.filter((part) => part.category === 'S');
  return [
    ['Together', money(totals.net)],
    ...taxed.map((part): [string, string] => [taxInWords(part, taxName), money(part.tax)]),
    ...(rounding === 0 ? [] : [[ROUNDING, money(rounding)] satisfies [string, string]]),
  ];
}

function drawTax(
  sheet: Sheet,
  parent: Element,
  price: Price,
  taxName: string,
  money: (minor: number) => string,
  column: Column,
): void {
  const columns = [
    { head: 'Tax', share: 6 },
    { head: 'On', share: 3, align: 'right', face: 'mono' },
    { head: 'Amount', share: 3, align: 'right', face: 'mono' },
  ] as const;
  const { rounding = 0 } = price;
  const rows = [
    ...price.totals.breakdown.map((part) => ({
      cells: [taxInWords(part, taxName), money(part.base), money(part.tax)],
    })),
    ...(rounding === 0 ? [] : [{ cells: [ROUNDING, '', money(rounding)] }]),
  ];
  table(sheet, parent, columns, rows, column, { style: styles.small });
  if (price.taxNumber === null) return;
  const number = `${taxName} number ${price.taxNumber}.`;
  flowText(sheet, parent, 'P', number, column, { style: styles.small, after: 2 });
}
