// Prisma's command line wants a native schema engine it may not be able to download. Generating the client never
// runs it, so any existing executable satisfies the check; migrations run in lib/db/engine.ts instead.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;

import { defineConfig } from 'prisma/config';

export default defineConfig({
  schema: 'prisma/schema',
  migrations: { path: 'prisma/migrations' },
});
