import { expect, it } from 'vitest';
import { db, disconnect } from '@/lib/db/client';
import { transaction } from '@/lib/db/transaction';
import { useDatabase } from '@/tests/database';

useDatabase();

it('a transaction is as isolated as it asks for, whatever the database does by itself', async () => {
  const [own] = await db.$queryRaw<{ name: string }[]>`SELECT current_database() AS name`;
  const level = (serializable: boolean) =>
    transaction((tx) => tx.$queryRaw`SELECT current_setting('transaction_isolation') AS level`, {
      serializable,
    });
  await db.$executeRawUnsafe(
    `ALTER DATABASE "${own?.name}" SET default_transaction_isolation = 'repeatable read'`,
  );
  await disconnect();
  expect(await level(false)).toEqual([{ level: 'read committed' }]);
  expect(await level(true)).toEqual([{ level: 'serializable' }]);
  expect(await level(false)).toEqual([{ level: 'read committed' }]);
});
