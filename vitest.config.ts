import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('./', import.meta.url));

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: root },
      { find: 'server-only', replacement: `${root}tests/empty.ts` },
    ],
  },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    // Races show only where connections really work at once: on a server, never on the embedded database.
    exclude: process.env['TEST_DATABASE_URL'] ? [] : ['tests/races/**'],
    environment: 'node',
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 20_000,
    globalSetup: ['tests/global-setup.ts'],
    setupFiles: ['tests/world/settings.ts', 'tests/silence.ts'],
  },
});
