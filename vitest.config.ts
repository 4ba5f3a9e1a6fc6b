import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('./', import.meta.url));

const any = (kind: string) => `tests/**/*${kind}.test.{ts,tsx}`;
const setup = ['tests/world/settings.ts', 'tests/world/cheap-passwords.ts', 'tests/silence.ts'];
// Races show only where connections really work at once: on a server, never on the embedded database.
const races = process.env['TEST_DATABASE_URL'] ? [] : ['tests/races/**'];

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@\//, replacement: root },
      { find: 'server-only', replacement: `${root}tests/empty.ts` },
    ],
  },
  test: {
    environment: 'node',
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 20_000,
    globalSetup: ['tests/global-setup.ts'],
    projects: [
      {
        extends: true,
        // Loading the program anew for each of some 260 files took longer than most of their tests.
        test: {
          name: 'shared',
          include: [any('')],
          exclude: [any('.alone'), ...races],
          isolate: false,
          setupFiles: [...setup, 'tests/world/left-as-found.ts'],
        },
      },
      {
        extends: true,
        // Files that replace modules, or settings that are read once.
        test: { name: 'alone', include: [any('.alone')], setupFiles: setup },
      },
    ],
  },
});
