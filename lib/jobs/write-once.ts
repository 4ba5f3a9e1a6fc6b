import { isUniqueViolation } from '@/lib/db/errors';

/**
 * Runs a write whose row takes the form's own key as its id. A form sent twice, by a second press or a browser that
 * repeats a lost request, meets the first one's row: the primary key decides, and the second changes nothing.
 */
export async function writeOnce(primaryKey: string, write: () => Promise<void>): Promise<void> {
  try {
    await write();
  } catch (error) {
    if (!isUniqueViolation(error, primaryKey)) throw error;
  }
}
