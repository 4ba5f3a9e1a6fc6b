'use server';
import type { FormAction } from '@/app/ui/forms/form-state';
import { addDays, dayInZone } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { repairsForQuote, taxRatesInUse } from '@/lib/catalogue/staff-records';
import { formatMoney } from '@/lib/money/amount';
import { taxInWords } from '@/lib/money/rate';
import { Refusal } from '@/lib/outcome';
import { validDaysProblem } from '@/lib/quotes/rules/held-price';
import { type QuoteLine, revisionTotals, shownLines } from '@/lib/quotes/rules/lines';
import { sendQuote } from '@/lib/quotes/send-quote';
import { readLine } from '@/lib/quotes/stored-lines';
import { readWorkshop, type WorkshopCard } from '@/lib/workshop/records';
import { onQuote, type QuoteCall } from '../quote-kit';
import { type PriceForm, priceForm } from '../schema';
import { taxChoices } from '../tax-choices';
import { readLines } from './read-lines';

/** Sends the price that was written, or only says what it comes to. */
export const writeQuote: FormAction<[number: string]> = async (number, _before, formData) =>
  onQuote(number, formData, {
    permission: 'money',
    schema: priceForm,
    part: 'prices',
    work: async (call) => {
      const { data } = call;
      const workshop = await readWorkshop();
      const lines = await linesOf(call, formData, workshop);
      if (data.press === 'sums') return sumsSentence(lines, call, workshop);
      await sendQuote({
        ...call,
        ...data,
        lines,
        customerAsked: data.customerAsked === 'yes',
      });
      return null;
    },
    stays: (sums) => (sums === null ? null : { done: sums }),
  });

async function linesOf(
  { quote, data }: QuoteCall<PriceForm>,
  formData: FormData,
  workshop: WorkshopCard,
): Promise<QuoteLine[]> {
  const [repairs, inUse] = await Promise.all([repairsForQuote(quote.request.modelId), taxRatesInUse()]);
  const repair = repairs.find(({ id }) => id === data.repairId);
  if (!repair) throw new Refusal('invalid', 'Choose a repair of the catalogue', 'repairId');
  const before = quote.revisions.at(-1)?.lines.map(readLine) ?? [];
  return readLines(formData, {
    repair,
    takePrice: data.takePrice === 'yes',
    taxes: taxChoices(inUse, before),
    currency: workshop.currency,
  });
}

/** What the lines come to, in one paragraph, before anything is sent. */
function sumsSentence(
  lines: readonly QuoteLine[],
  call: QuoteCall<PriceForm>,
  workshop: WorkshopCard,
): string {
  const { validDays } = call.data;
  const problem = validDaysProblem(validDays);
  if (problem) throw new Refusal('invalid', problem, 'validDays');
  const { locale, currency, timeZone, taxName } = workshop;
  const money = (minor: number) => formatMoney(minor, currency, locale);
  const sums = revisionTotals(lines, workshop.pricesIncludeTax);
  const until = formatDay(addDays(dayInZone(call.now, timeZone), validDays), locale, 'weekday');
  return [
    `${shownLines(lines)
      .map((line) => `${line.description} ${money(line.amount)}`)
      .join('; ')}.`,
    `Before tax ${money(sums.net)}.`,
    ...sums.breakdown.map(
      (part) => `${taxInWords(part, taxName)} on ${money(part.base)}: ${money(part.tax)}.`,
    ),
    `Together ${money(sums.gross)}, held until ${until}.`,
    'Nothing has been sent yet.',
  ].join(' ');
}
