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
  const isOwn = reader === 'customer';
  if (!isQuoteEventKind(kind)) return kind;
  const event = parseQuoteEvent(kind, data);
  switch (event.kind) {
    case 'asked':
      return `${isOwn ? 'You asked for a price' : 'Price asked for'}${withPhotos(event.data.photos)}`;
    case 'questioned':
      return isOwn ? 'We asked you something' : 'Question to the customer';
    case 'answered':
      return `${isOwn ? 'You answered' : 'Answer from the customer'}${withPhotos(event.data.photos)}`;
    case 'added':
      return `${isOwn ? 'You added something' : 'The customer added something'}${withPhotos(event.data.photos)}`;
    case 'sent':
      return event.data.customerAsked
        ? `Price sent (revision ${event.data.revision}), changed because ${isOwn ? 'you' : 'the customer'} asked`
        : `Price sent (revision ${event.data.revision})`;
    case 'decided':
      return `Price ${event.data.decision} (revision ${event.data.revision})${event.data.afterNoTo === undefined ? '' : `, after the no to revision ${event.data.afterNoTo}`}`;
    case 'reminded':
      return 'Reminded that the price lapses soon';
    case 'lapsed':
      return 'The price lapsed';
    case 'booked':
      return 'Repair booked';
    case 'written':
      return isOwn ? 'We wrote to you' : 'Message to the customer';
    case 'message-settled':
      return isOwn ? 'We read what you wrote' : SETTLED_WORDS[event.data.how];
    case 'turned-down':
      return 'Turned down';
    case 'link-renewed':
      return 'Private link renewed';
    case 'contact-corrected':
      return isOwn ? 'Your contact was corrected' : 'The customer’s contact was corrected';
    case 'data-removed':
      return 'Personal data removed';
  }
}

function withPhotos(photos: number): string {
  if (photos === 0) return '';
  return photos === 1 ? ', with 1 photo' : `, with ${photos} photos`;
}
