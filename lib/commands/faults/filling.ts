/** Quay & Alder with its catalogue and an owner, and no jobs yet. */
import { config } from '@/lib/config';
import { disconnect } from '@/lib/db/client';
import { migrate } from '@/lib/db/migrate';
import { transaction } from '@/lib/db/transaction';
import { prepareQueue } from '@/lib/mail/boss';
import { ensureFirstOwner } from '@/lib/people/first-owner';
import { currentSigningKey } from '@/lib/warranty/signing-key';
import { loadCatalogue } from '@/prisma/demo/catalogue';
import { writeWorkshop } from '@/prisma/demo/workshop';

const now = new Date();
await migrate(config.databaseUrl);
await prepareQueue();
await ensureFirstOwner();
await transaction(async (tx) => {
  await writeWorkshop(tx, now);
  await loadCatalogue(tx, now);
});
await currentSigningKey(now);
await disconnect();
