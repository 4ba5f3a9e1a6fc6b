import { type Tx, transaction } from '@/lib/db/transaction';
import { Refusal } from '@/lib/outcome';
import { readPinTable } from './rules/read-pin-table';

export type OwnTableInput = { name: string; source: string; text: string };

/**
 * Keeps a pin table of the workshop's own and returns its id. One that replaces another is a new row: the old one is retired and
 * stays with the sheets that were made with it. Refuses a text with problems, and to replace what was replaced or retired already.
 */
export async function savePinTable(o: {
  input: OwnTableInput;
  replaces: string | null;
  userId: string;
  now: Date;
}): Promise<string> {
  const [problem] = readPinTable(o.input.text).problems;
  if (problem) throw new Refusal('invalid', `Line ${problem.line}: ${problem.message}`, 'text');
  return transaction(async (tx) => {
    if (o.replaces !== null) await retire(tx, o.replaces, o.now);
    const row = await tx.pinTable.create({
      data: { ...o.input, createdAt: o.now, userId: o.userId },
      select: { id: true },
    });
    return row.id;
  });
}

/** Takes a table out of the choice for new checks; sheets that name it keep it. */
export async function retirePinTable(o: { id: string; now: Date }): Promise<void> {
  await transaction((tx) => retire(tx, o.id, o.now));
}

// Two owners may replace the same table at once: the update asks that it is still in use, so the second is told.
async function retire(tx: Tx, id: string, now: Date): Promise<void> {
  const { count } = await tx.pinTable.updateMany({
    where: { id, retiredAt: null },
    data: { retiredAt: now },
  });
  if (count === 0) {
    throw new Refusal(
      'conflict',
      'Somebody replaced or retired this pin table meanwhile. Look at the list again.',
    );
  }
}
