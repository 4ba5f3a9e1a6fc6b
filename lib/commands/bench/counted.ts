import pg from 'pg';

/** Statements sent to the database since the start of the work, but for those that only open and close a transaction. */
export async function countingQueries<T>(work: () => Promise<T>): Promise<{ answer: T; queries: number }> {
  const sent = pg.Client.prototype.query;
  let queries = 0;
  pg.Client.prototype.query = function counted(this: pg.Client, ...given: Parameters<typeof sent>) {
    if (!/^\s*(BEGIN|COMMIT|ROLLBACK|SET|DEALLOCATE)\b/i.test(textOf(given[0]))) queries += 1;
    return Reflect.apply(sent, this, given);
  } as typeof sent;
  try {
    const answer = await work();
    return { answer, queries };
  } finally {
    pg.Client.prototype.query = sent;
  }
}

function textOf(query: unknown): string {
  if (typeof query === 'string') return query;
  if (typeof query === 'object' && query !== null && 'text' in query) return String(query.text);
  return '';
}
