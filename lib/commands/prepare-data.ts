import { now } from '@/lib/clock';
import { config } from '@/lib/config';
import { migrate } from '@/lib/db/migrate';
import { prepareQueue } from '@/lib/mail/boss';
import { demoOwner, ensureFirstOwner } from '@/lib/people/first-owner';
import { refuseLiveDemonstration } from '@/prisma/demo/refuse-live';
import { isDemoWanted } from '@/prisma/demo/unfinished';

/** Migrates, makes the mail queue and the first owner, and fills an empty demonstration. Returns how to sign in. */
export async function prepareData(): Promise<string | undefined> {
  await migrate(config.databaseUrl);
  await prepareQueue();
  if (!config.isDemo) await refuseLiveDemonstration();
  const owner = await ensureFirstOwner();
  if (config.isDemo && (await isDemoWanted())) {
    const { seedDemo } = await import('@/prisma/demo/seed');
    await seedDemo({ now: now() });
  }
  if (config.isDemo) return `sign in as ${demoOwner.email}, password ${demoOwner.password}`;
  return owner ? `first sign-in: ${owner.email}, password ${owner.password} (shown once)` : undefined;
}
