import type { Tax } from '@/app/workshop/(inside)/price-lines/taxes';
import { totals } from '@/lib/money/tax';
import type { QuoteRevisionRecord } from '@/lib/quotes/records';
import type { QuoteLine } from '@/lib/quotes/rules/lines';
import { linesKept } from '@/lib/quotes/rules/tax-mode';
import { readLine } from '@/lib/quotes/stored-lines';
import type { WorkshopCard } from '@/lib/workshop/card';

export type StartingPrice = {
  /** in amounts as prices are kept now, with tax or before it */
  lines: QuoteLine[];
  takePrice: boolean;
  /** the last price was kept the other way, so that its amounts were worked over */
  isWorkedOver: boolean;
  reason: string;
  proposal: string;
  workingDays: number | null;
  note: string;
};

type Sent = Pick<QuoteRevisionRecord, 'isGross' | 'reason' | 'proposal' | 'workingDays' | 'note'> & {
  lines: readonly Parameters<typeof readLine>[0][];
};

const EMPTY: StartingPrice = {
  lines: [],
  takePrice: true,
  isWorkedOver: false,
  reason: '',
  proposal: '',
  workingDays: null,
  note: '',
};

/** What the form starts from: the last price that was sent, an inspection alone, or the price of the catalogue. */
export function startingPrice(
  quote: { revisions: readonly Sent[] },
  o: { workshop: WorkshopCard; isInspection: boolean; tax: Tax | undefined },
): StartingPrice {
  if (o.isInspection) {
    return {
      ...EMPTY,
      lines: o.tax ? [inspectionLine(o.workshop, o.tax)] : [],
      takePrice: false,
      proposal: 'We inspect the unit, tell you what is wrong, and offer you a price for the repair.',
      note: 'You say yes or no to that price then. Nothing more is done before.',
    };
  }
  const last = quote.revisions.at(-1);
  if (!last) return EMPTY;
  const { isGross, reason, proposal, workingDays, note } = last;
  const asGross = o.workshop.pricesIncludeTax;
  const lines = linesKept(last.lines.map(readLine), { isGross, asGross });
  const isWorkedOver = isGross !== asGross;
  return { lines, takePrice: false, isWorkedOver, reason, proposal, workingDays, note };
}

/** The workshop's fee is kept with tax; where prices are kept without, the line is too. */
function inspectionLine(workshop: WorkshopCard, tax: Tax): QuoteLine {
  const fee = { amount: workshop.inspectionFeeMinor, category: tax.category, rateBps: tax.rateBps };
  const amount = workshop.pricesIncludeTax ? fee.amount : totals([fee], 'gross').net;
  return { ...fee, amount, kind: 'inspection-fee', description: 'Inspection: finding the fault' };
}
