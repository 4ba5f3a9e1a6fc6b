import { z } from 'zod';

/** The largest whole number of a PostgreSQL integer column (numeric types: 4 bytes); asked for a larger one, it fails. */
const LARGEST = 2_147_483_647;

/**
 * A hidden field of a form that says which version or revision the person saw: a whole number from 1 to what its column
 * can hold. Nobody types it, so there is no sentence for what it refuses.
 *
 * z.object({ version: countedField }).parse({ version: '3' }) -> { version: 3 }
 */
export const countedField = z.coerce.number().int().positive().max(LARGEST);
