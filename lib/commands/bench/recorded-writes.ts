import pg from 'pg';

export type Write = { text: string; values: unknown[] };

/** What the work wrote to the database, statement by statement with its values. */
export async function recordingWrites<T>(work: () => Promise<T>): Promise<{ answer: T; writes: Write[] }> {
  const sent = pg.Client.prototype.query;
  const writes: Write[] = [];
  pg.Client.prototype.query = function recorded(this: pg.Client, ...given: Parameters<typeof sent>) {
    const [query, values]: unknown[] = given;
    const text = typeof query === 'string' ? query : textOf(query);
    if (/^\s*(INSERT|UPDATE|DELETE|WITH)\b/i.test(text))
      writes.push({ text, values: Array.isArray(values) ? values : valuesOf(query) });
    return Reflect.apply(sent, this, given);
  } as typeof sent;
  try {
    return { answer: await work(), writes };
  } finally {
    pg.Client.prototype.query = sent;
  }
}

function textOf(query: unknown): string {
  return typeof query === 'object' && query !== null && 'text' in query ? String(query.text) : '';
}

function valuesOf(query: unknown): unknown[] {
  const has = typeof query === 'object' && query !== null && 'values' in query;
  return has && Array.isArray(query.values) ? query.values : [];
}
