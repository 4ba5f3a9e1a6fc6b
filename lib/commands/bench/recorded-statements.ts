import pg from 'pg';

export type Statement = { text: string; values: unknown[] };

const onlyTransaction = /^\s*(BEGIN|COMMIT|ROLLBACK|SET|DEALLOCATE)\b/i;

/** Statements sent to the database while the work ran, with their values, but for those that only open and close a transaction. */
export async function recordingStatements<T>(
  work: () => Promise<T>,
): Promise<{ answer: T; sent: Statement[] }> {
  const query = pg.Client.prototype.query;
  const sent: Statement[] = [];
  pg.Client.prototype.query = function recorded(this: pg.Client, ...given: Parameters<typeof query>) {
    const statement = statementOf(given);
    if (!onlyTransaction.test(statement.text)) sent.push(statement);
    return Reflect.apply(query, this, given);
  } as typeof query;
  try {
    return { answer: await work(), sent };
  } finally {
    pg.Client.prototype.query = query;
  }
}

/** True for a statement that writes; one that begins with WITH does when one of its parts does. */
export function isWrite({ text }: Statement): boolean {
  return (
    /^\s*(INSERT|UPDATE|DELETE)\b/i.test(text) ||
    /^\s*WITH\b.*\b(INSERT INTO|UPDATE|DELETE FROM)\s+"/is.test(text)
  );
}

// A text and its values, or both in one object.
function statementOf([query, values]: readonly unknown[]): Statement {
  const given = typeof query === 'object' && query !== null ? query : { text: query, values };
  return {
    text: 'text' in given ? String(given.text) : '',
    values: 'values' in given && Array.isArray(given.values) ? given.values : [],
  };
}
