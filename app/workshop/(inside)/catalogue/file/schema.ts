import { z } from 'zod';
import { FILE_KINDS } from '@/lib/catalogue/rules/file-kinds';
import { LARGEST_KEPT } from '@/lib/numbers/column';

export const uploadSchema = z.object({ file: z.instanceof(File, { message: 'Choose the file' }) });

export const importSchema = z.object({
  mark: z.string('Look at the file again before you import it').max(100),
});

/** What the address says of an import that was done. */
export const importedCounts = z.object({
  file: z.enum(FILE_KINDS),
  added: z.coerce.number().int().min(0).max(LARGEST_KEPT),
  changed: z.coerce.number().int().min(0).max(LARGEST_KEPT),
});
