import { z } from 'zod';
import { SETTLED_BY, SETTLED_WORDS } from '@/lib/jobs/rules/settled';

/**
 * Everything that can happen to a quote that was asked for, one payload shape per kind. Rows of quote_event hold these
 * for good; a stored shape is never edited in place.
 */
export const QUOTE_EVENT_DATA = {
  asked: z.object({ photos: z.number().int() }),
  questioned: z.object({ messageId: z.string() }),
  answered: z.object({ messageId: z.string(), photos: z.number().int() }),
  added: z.object({ messageId: z.string(), photos: z.number().int() }),
  sent: z.object({
    revision: z.number().int(),
    gross: z.number().int(),
    validUntil: z.string(),
    /** the customer asked for what this revision changes */
    customerAsked: z.boolean(),
  }),
  decided: z.object({
    revision: z.number().int(),
    decision: z.enum(['accepted', 'declined']),
    /** a yes to the price that the customer had declined as this revision */
    afterNoTo: z.number().int().optional(),
  }),
  reminded: z.object({ revision: z.number().int() }),
  lapsed: z.object({ revision: z.number().int() }),
  booked: z.object({ jobNumber: z.string() }),
  /** words to the customer beside a price */
  written: z.object({ messageId: z.string() }),
  'message-settled': z.object({ messageId: z.string(), how: z.enum(SETTLED_BY) }),
  'turned-down': z.object({ messageId: z.string() }),
  'link-renewed': z.object({}),
  'contact-corrected': z.object({}),
  'data-removed': z.object({}),
} satisfies Record<string, z.ZodType>;

export type QuoteEventKind = keyof typeof QUOTE_EVENT_DATA;
export type QuoteEventData = {
  [K in QuoteEventKind]: { kind: K; data: z.input<(typeof QUOTE_EVENT_DATA)[K]> };
}[QuoteEventKind];

type StoredQuoteEvent = {
  [K in QuoteEventKind]: { kind: K; data: z.output<(typeof QUOTE_EVENT_DATA)[K]> };
}[QuoteEventKind];

export function isQuoteEventKind(text: string): text is QuoteEventKind {
  return text in QUOTE_EVENT_DATA;
}

/** Reads a stored payload back by its kind; throws where a row does not fit its kind. */
export function parseQuoteEvent(kind: QuoteEventKind, data: unknown): StoredQuoteEvent {
  // The kind picks the schema, so the pair belongs together; the compiler cannot follow that through the index.
  return { kind, data: QUOTE_EVENT_DATA[kind].parse(data) } as StoredQuoteEvent;
}

type StoredData<K extends QuoteEventKind> = z.output<(typeof QUOTE_EVENT_DATA)[K]>;

/** What each kind says of itself, to the workshop or to the customer whose own it is. */
const LINES: { [K in QuoteEventKind]: (data: StoredData<K>, isOwn: boolean) => string } = {
  asked: ({ photos }, isOwn) => `${isOwn ? 'You asked for a price' : 'Price asked for'}${withPhotos(photos)}`,
  questioned: (_, isOwn) => (isOwn ? 'We asked you something' : 'Question to the customer'),
  answered: ({ photos }, isOwn) =>
    `${isOwn ? 'You answered' : 'Answer from the customer'}${withPhotos(photos)}`,
  added: ({ photos }, isOwn) =>
    `${isOwn ? 'You added something' : 'The customer added something'}${withPhotos(photos)}`,
  sent: ({ customerAsked, revision }, isOwn) =>
    customerAsked
      ? `Price sent (revision ${revision}), changed because ${isOwn ? 'you' : 'the customer'} asked`
      : `Price sent (revision ${revision})`,
  decided: ({ decision, revision, afterNoTo }) =>
    `Price ${decision} (revision ${revision})${afterNoTo === undefined ? '' : `, after the no to revision ${afterNoTo}`}`,
  reminded: () => 'Reminded that the price lapses soon',
  lapsed: () => 'The price lapsed',
  booked: () => 'Repair booked',
  written: (_, isOwn) => (isOwn ? 'We wrote to you' : 'Message to the customer'),
  'message-settled': ({ how }, isOwn) => (isOwn ? 'We read what you wrote' : SETTLED_WORDS[how]),
  'turned-down': () => 'Turned down',
  'link-renewed': () => 'Private link renewed',
  'contact-corrected': (_, isOwn) =>
    isOwn ? 'Your contact was corrected' : 'The customer’s contact was corrected',
  'data-removed': () => 'Personal data removed',
};

/**
 * One line of a quote's history in plain words, for the workshop, or for the customer who reads it as their own.
 *
 * quoteEventLine('sent', { revision: 2, gross: 9600, validUntil: '2026-12-26', customerAsked: true })
 * -> 'Price sent (revision 2), changed because the customer asked'
 */
export function quoteEventLine(
  kind: string,
  data: unknown,
  reader: 'workshop' | 'customer' = 'workshop',
): string {
  return isQuoteEventKind(kind) ? lineOf(kind, data, reader === 'customer') : kind;
}

function lineOf<K extends QuoteEventKind>(kind: K, data: unknown, isOwn: boolean): string {
  // The kind picks schema and line, so the pair belongs together; the compiler cannot follow that through the index.
  return LINES[kind](QUOTE_EVENT_DATA[kind].parse(data) as StoredData<K>, isOwn);
}

function withPhotos(photos: number): string {
  if (photos === 0) return '';
  return photos === 1 ? ', with 1 photo' : `, with ${photos} photos`;
}
