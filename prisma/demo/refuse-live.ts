import { db } from '@/lib/db/client';
import { demoOwner } from '@/lib/people/first-owner';
import { DEMO_STAFF } from './staff';

/**
 * Refuses to go live on what was a demonstration: its passwords stand in the README, and its customers, numbers and prices are
 * invented. An account that was given another address is taken for somebody's own.
 */
export async function refuseLiveDemonstration(): Promise<void> {
  const known = [demoOwner, ...DEMO_STAFF].map(({ email }) => email);
  if ((await db.user.count({ where: { email: { in: known } } })) === 0) return;
  throw new Error(
    'This is the data of a demonstration, whose passwords everybody knows. Start on an empty place of its own ' +
      '(DATA_DIR, and DATABASE_URL where you set one), or go on trying with DEMO=on',
  );
}
