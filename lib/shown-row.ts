import { createHash } from 'node:crypto';
import { Refusal } from './outcome';

/** A row that a form was drawn from: its id, and the mark of what the form showed of it. */
export type Shown = { id: string; mark: string };

/**
 * A mark of those fields of a row that a form shows, 32 hexadecimal digits: the same while they say the same, whatever else
 * of the row changes. Fields are named, so that a row read with more of them has the same mark.
 *
 * markOf({ name: true }, { id: '1', name: 'Gull' }) === markOf({ name: true }, { name: 'Gull', slug: 'gull' })
 */
export function markOf<K extends string>(
  fields: Readonly<Record<K, true>>,
  row: Readonly<Record<NoInfer<K>, unknown>>,
): string {
  const keys = Object.keys(fields).toSorted() as K[];
  const text = JSON.stringify(keys.map((key) => [key, row[key]]));
  return createHash('sha256').update(text).digest('hex').slice(0, 32);
}

/**
 * The row that a form was drawn from, as it is now. Refuses one that is gone, and as a conflict a form that was drawn from an older
 * state of it. The row has to be locked before it is read: of two who save at once the second then reads what the first left.
 */
export function requireAsShown<K extends string, R extends Readonly<Record<K, unknown>>>(
  shown: Shown,
  fields: Readonly<Record<K, true>>,
  row: R | null,
  what: string,
): R {
  if (!row) throw new Refusal('not-found', `This ${what} is no longer on the list.`);
  if (shown.mark === markOf(fields, row)) return row;
  throw new Refusal(
    'conflict',
    `Somebody changed this ${what} while you had this page open. Nothing of yours was saved: load the page again to see it as it is.`,
  );
}
