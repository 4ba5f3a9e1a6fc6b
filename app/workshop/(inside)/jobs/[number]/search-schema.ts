import { z } from 'zod';
import { SEARCH_ENDS } from '@/lib/jobs/rules/parcel-search';
import { neededText, optionalText } from '@/lib/jobs/rules/typed-text';

export const seekForm = z.object({
  note: neededText('what you asked the carrier, in words for the customer', 500),
});

/** Where the words are needed is decided with how it ended: lib/jobs/seek-parcel.ts. */
export const searchEndForm = z.object({
  how: z.enum(SEARCH_ENDS, 'Choose how it ended'),
  note: optionalText(1000),
});
