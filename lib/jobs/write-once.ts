import { createHash } from 'node:crypto';
import { isUniqueViolation } from '@/lib/db/errors';

/**
 * The id of the row that a form writes, from the form's own key and everything that was sent; nothing without a key.
 *
 * A browser that goes back shows the form it had, key and all, and what is sent from there then is something else: the key alone
 * would take it for a repetition and drop it. The first eleven bytes stay, since ids grow with time (UUID 7, lib/db/in-order.ts).
 */
export function idOfSent(formKey: string, sent: unknown): { id: string };
export function idOfSent(formKey: string | undefined, sent: unknown): { id?: string };
export function idOfSent(formKey: string | undefined, sent: unknown): { id?: string } {
  if (formKey === undefined) return {};
  const text = JSON.stringify([formKey, sent], (_, part) => (part instanceof Map ? [...part] : part));
  const hash = createHash('sha256').update(text).digest('hex');
  return { id: `${formKey.slice(0, -10)}${hash.slice(0, 10)}` };
}

/**
 * Runs a write whose row has an id by `idOfSent`. What is sent twice, by a second press or a browser that repeats a lost
 * request, meets the first one's row: the primary key decides, and the second changes nothing.
 */
export async function writeOnce(primaryKey: string, write: () => Promise<void>): Promise<void> {
  try {
    await write();
  } catch (error) {
    if (!isUniqueViolation(error, primaryKey)) throw error;
  }
}
