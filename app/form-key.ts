import { v7 } from 'uuid';

/**
 * The id of the row that a form will write, so that a second press adds nothing. It grows with time like the ids of the
 * database client (UUID 7), so that rows of one instant keep their order: see `lib/db/in-order.ts`.
 */
export function newFormKey(): string {
  return v7();
}
