import { describe, expect, test } from 'vitest';
import { recordingStatements } from '@/lib/commands/bench/recorded-statements';
import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';
import { findByText } from '@/lib/jobs/find-by-text';
import { findEverywhere } from '@/lib/jobs/find-everywhere';
import { findPeople } from '@/lib/keeping/records';
import { useDatabase } from '@/tests/database';

useDatabase();

const jobsOf = (q: string) => findByText({ stage: null, q, page: 1, size: 25 });

/** The plan of the statement that the search sends, where reading a whole table costs too much to be chosen. */
async function planOf(search: () => Promise<unknown>): Promise<string> {
  const { sent } = await recordingStatements(search);
  const [one] = sent;
  if (!one || sent.length > 1) throw new Error(`${sent.length} statements were sent`);
  return onServer(config.databaseUrl, async (client) => {
    await client.query('BEGIN');
    await client.query('SET LOCAL enable_seqscan = off');
    await client.query('SET LOCAL enable_indexscan = off');
    const { rows } = await client.query<Record<string, string>>(`EXPLAIN ${one.text}`, one.values);
    await client.query('ROLLBACK');
    return rows.map((row) => Object.values(row)[0]).join('\n');
  });
}

describe('a search by a part of a text', () => {
  test.each(['MF21048', 'QX9 4ZZ', 'Tern Haven'])(
    'asks the indexes of its very expressions: %s',
    async (q) => {
      const plan = await planOf(() => jobsOf(q));
      expect(plan).toContain('job_parts');
      expect(plan).toContain('customer_parts');
      expect(plan).not.toContain('Seq Scan');
    },
  );

  test.each(['holt', '020 7946 0123'])('asks those of people: %s', async (q) => {
    const plan = await planOf(() => findPeople({ q, page: 1 }));
    expect(plan).toContain('request_parts');
    expect(plan).toContain('customer_parts');
  });

  test('asks those of every place that Find looks through, in one statement', async () => {
    const plan = await planOf(() => findEverywhere({ q: 'MF21048', withInvoices: true }));
    for (const index of ['job_parts', 'customer_parts', 'request_parts', 'lot_parts', 'buyer_parts']) {
      expect(plan).toContain(index);
    }
  });

  test('asks for a number without the letters that our numbers do not hold', async () => {
    const { sent } = await recordingStatements(() =>
      findByText({ stage: null, q: 'MO1L', page: 1, size: 25 }),
    );
    expect(sent[0]?.values).toContain('%M011%');
  });
});
