import { z } from 'zod';
import { isDay } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { formatMoney } from '@/lib/money/amount';

/** What a lot says of itself and may be corrected; what one piece costs in minor units, without tax. */
const lotFacts = z.object({
  code: z.string(),
  supplier: z.string(),
  receivedOn: z.string().refine(isDay),
  unitCostMinor: z.number().int(),
});
export type LotFacts = z.output<typeof lotFacts>;

/** What can happen to a lot beside its pieces being fitted, one payload shape per kind. Rows of lot_event hold these for good. */
export const LOT_EVENT_DATA = {
  corrected: z.object({ before: lotFacts, after: lotFacts }),
  added: z.object({ quantity: z.number().int(), unitCostMinor: z.number().int() }),
  'written-off': z.object({ quantity: z.number().int(), reason: z.string() }),
} satisfies Record<string, z.ZodType>;

export type LotEventKind = keyof typeof LOT_EVENT_DATA;
export type LotEventData = {
  [K in LotEventKind]: { kind: K; data: z.input<(typeof LOT_EVENT_DATA)[K]> };
}[LotEventKind];
type StoredLotEvent = {
  [K in LotEventKind]: { kind: K; data: z.output<(typeof LOT_EVENT_DATA)[K]> };
}[LotEventKind];

/**
 * One line of a lot's history in plain words; the screen adds who and when.
 *
 * lotEventLine('written-off', { quantity: 3, reason: 'Bent pins' }, setting) -> 'Written off: 3 pieces. Bent pins'
 */
export function lotEventLine(
  kind: string,
  data: unknown,
  { locale, currency }: { locale: string; currency: string },
): string {
  const event = readLotEvent(kind, data);
  if (!event) return kind;
  switch (event.kind) {
    case 'added':
      return `Added: ${pieces(event.data.quantity)} at ${formatMoney(event.data.unitCostMinor, currency, locale)}`;
    case 'written-off':
      return `Written off: ${pieces(event.data.quantity)}. ${event.data.reason}`;
    case 'corrected': {
      const { before, after } = event.data;
      const words = (facts: LotFacts) => ({
        Lot: facts.code,
        Supplier: facts.supplier,
        'Received on': formatDay(facts.receivedOn, locale, 'short'),
        'Cost of one': formatMoney(facts.unitCostMinor, currency, locale),
      });
      const now: Record<string, string> = words(after);
      const changes = Object.entries(words(before)).filter(([name, text]) => text !== now[name]);
      return `Corrected: ${changes.map(([name, text]) => `${name}: ${now[name]}, was ${text}`).join('; ')}`;
    }
  }
}

function readLotEvent(kind: string, data: unknown): StoredLotEvent | null {
  if (!isLotEventKind(kind)) return null;
  // The kind picks the schema, so the pair belongs together; the compiler cannot follow that through the index.
  return { kind, data: LOT_EVENT_DATA[kind].parse(data) } as StoredLotEvent;
}

function isLotEventKind(text: string): text is LotEventKind {
  return text in LOT_EVENT_DATA;
}

function pieces(count: number): string {
  return count === 1 ? '1 piece' : `${count} pieces`;
}
