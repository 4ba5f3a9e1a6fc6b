import { z } from 'zod';
import { isCountryCode } from '@/lib/numbers/countries';

/** Countries to which a parcel goes without a customs note, as codes with spaces or commas between them, each once. */
export const customsInput = z.object({
  customsFree: z
    .string()
    .max(1000, 'Use 1,000 characters or fewer')
    .default('')
    .transform((text) => [
      ...new Set(
        text
          .toUpperCase()
          .split(/[\s,;]+/)
          .filter(Boolean),
      ),
    ])
    .refine((codes) => codes.every(isCountryCode), 'Enter codes of countries with two letters, like JE, GG'),
});
