import { z } from 'zod';
import { LARGEST_KEPT } from '@/lib/numbers/column';

export const uploadSchema = z.object({ file: z.instanceof(File, { message: 'Choose the file' }) });

export const importSchema = z.object({
  mark: z.string('Look at the file again before you import it').max(100),
});

/** What the address says of an import that was done. */
export const importedCounts = z.object({
  added: z.coerce.number().int().min(0).max(LARGEST_KEPT),
  changed: z.coerce.number().int().min(0).max(LARGEST_KEPT),
});
