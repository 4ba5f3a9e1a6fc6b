import { readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { onServer } from '@/lib/db/server';

const onlyTransaction = /^\s*(BEGIN|COMMIT|ROLLBACK|SAVEPOINT|RELEASE|SET|DEALLOCATE)\b/i;

/** A server of one's own and the file it writes its log to. */
export type ServerLog = { url: string; log: string };

/** Statements that a throwaway server was sent while the work ran, read from its log; nobody else may ask it meanwhile. */
export async function countInLog(o: ServerLog, work: () => Promise<unknown>): Promise<number> {
  const logging = (how: string) =>
    onServer(o.url, async (client) => {
      await client.query(`ALTER SYSTEM SET log_statement = '${how}'`);
      await client.query('SELECT pg_reload_conf()');
    });
  await logging('all');
  // Each session of the pool reads the setting before its next statement, once the server has told it.
  await wait(300);
  const before = readFileSync(o.log, 'utf8').length;
  await work();
  await wait(100);
  const written = readFileSync(o.log, 'utf8').slice(before);
  await logging('none');
  const statements = [...written.matchAll(/LOG: {2}(?:execute [^:]*|statement): (.*)/g)];
  return statements.filter(([, text]) => !onlyTransaction.test(text ?? '')).length;
}
