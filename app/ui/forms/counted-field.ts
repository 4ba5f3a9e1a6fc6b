import { z } from 'zod';
import { LARGEST_KEPT } from '@/lib/numbers/column';

/**
 * A hidden field of a form that says which version or revision the person saw: a whole number from 1 to what its column
 * keeps. Nobody types it, so there is no sentence for what it refuses.
 *
 * z.object({ version: countedField }).parse({ version: '3' }) -> { version: 3 }
 */
export const countedField = z.coerce.number().int().positive().max(LARGEST_KEPT);

/** A hidden field of a form that says which amount the person saw, in minor units and of either sign. */
export const seenAmount = z.coerce.number().int().min(-LARGEST_KEPT).max(LARGEST_KEPT);
