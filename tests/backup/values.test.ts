import type { ClientBase } from 'pg';
import { expect, test } from 'vitest';
import { insertRows, openTables, setSequences } from '@/lib/backup/load-tables';
import { describeTables, exactly, readRows, readSequences, type Table } from '@/lib/backup/tables';
import { config } from '@/lib/config';
import { onServer } from '@/lib/db/server';
import { useDatabase } from '@/tests/database';

useDatabase();

// Kinds of columns that the workshop has, and kinds that a later migration may bring.
const ODD = `
  CREATE TABLE odd (
    id int GENERATED ALWAYS AS IDENTITY PRIMARY KEY, place text COLLATE "C", small smallint, big bigint, exact numeric,
    pair numeric(12, 2), "float" double precision, short real, yes boolean, day date, clock time(3), span interval,
    moment timestamptz, wall timestamp, bytes bytea, list text[], grid int[][], free json, kept jsonb, odd_one uuid,
    letters varchar(9), padded char(4), doubled int GENERATED ALWAYS AS (small * 2) STORED,
    parent int REFERENCES odd (id)
  );
  CREATE SEQUENCE told AS bigint START 5`;

const FILLED = `
  INSERT INTO odd (place, small, big, exact, pair, "float", short, yes, day, clock, span, moment, wall, bytes, list, grid, free,
      kept, odd_one, letters, padded, parent) VALUES
    (E'Quote \\" and \\\\ and \\t tab\\nline, \\u2028 \\u00e4 🎚', -32768, 9223372036854775807, 0.1000000000000000000000000000001, 1.50,
      0.1::float8 + 0.2::float8, 16777217, true, '0044-03-15 BC', '23:59:59.999', '1 year 2 mons -3 days 04:05:06.789', '2026-10-25 00:59:59.123456+00',
      'infinity', '\\x00ff0a5c22', ARRAY['a,b', '"', 'NULL', NULL, '', E'\\\\', '{}'], '{{1,2},{3,4}}', '{"b":1,  "a":1, "a":2}',
      '{"b": 1.10, "a": [null, "\\u2028"]}', '00000000-0000-4000-8000-000000000001', 'neun', 'ab', 3),
    ('', 0, -9223372036854775808, 'NaN', -0.01, 'NaN', '-Infinity', false, 'infinity', '00:00', '0', '-infinity', '2026-03-29 01:30', '', '{}',
      '{}', 'null', 'null', NULL, '', '', NULL),
    (NULL, NULL, NULL, NULL, NULL, -0.0::float8, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, NULL, 1);
  DELETE FROM odd WHERE id = 2;
  INSERT INTO odd (small) SELECT n FROM generate_series(1, 4500) AS n;
  SELECT nextval('told'), nextval('told')`;

async function linesOf(client: ClientBase, table: Table): Promise<string[]> {
  const lines: string[] = [];
  for await (const page of readRows(client, table)) lines.push(...page);
  return lines;
}

test('every kind of value comes out as it went in, counters go on, and references and generated columns hold', async () => {
  await onServer(config.databaseUrl, async (client) => {
    try {
      await client.query(ODD);
      await client.query(FILLED);
      const asText = async () =>
        (await client.query<{ row: string }>('SELECT odd::text AS row FROM odd ORDER BY id')).rows.map(
          (each) => each.row,
        );
      const before = await asText();
      const { table, lines, sequences } = await exactly(client, 'BEGIN', async () => {
        const found = (await describeTables(client)).find(({ name }) => name === 'odd');
        if (!found) throw new Error('no table odd');
        return { table: found, lines: await linesOf(client, found), sequences: await readSequences(client) };
      });
      expect(lines).toHaveLength(4502);
      expect(new Set(lines.map((line) => JSON.parse(line)[0])).size).toBe(4502);

      // Another session's habits must not matter, nor that the first row points at one further down.
      await client.query(
        `SET timezone = 'America/St_Johns'; SET datestyle = 'German'; SET extra_float_digits = -5`,
      );
      await client.query('TRUNCATE odd; ALTER SEQUENCE told RESTART');
      await exactly(client, 'BEGIN', async () => {
        const close = await openTables(client, [table]);
        for (let from = 0; from < lines.length; from += 1000)
          await insertRows(client, table, lines.slice(from, from + 1000));
        await setSequences(client, sequences);
        await close();
        expect(await linesOf(client, table)).toEqual(lines);
      });
      await client.query('RESET timezone; RESET datestyle; RESET extra_float_digits');
      expect(await asText()).toEqual(before);
      const { rows } = await client.query(
        `INSERT INTO odd (small, parent) VALUES (21, 1) RETURNING id, doubled, nextval('told')::int AS told`,
      );
      expect(rows).toEqual([{ id: 4504, doubled: 42, told: 7 }]);
      await expect(client.query('INSERT INTO odd (parent) VALUES (99999)')).rejects.toThrow('foreign key');
    } finally {
      await client.query('DROP TABLE IF EXISTS odd; DROP SEQUENCE IF EXISTS told');
    }
  });
});
