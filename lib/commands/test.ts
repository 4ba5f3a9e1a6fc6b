/** `npm test`: everything that has to hold, cheapest first, and stops at what does not. */
import { build, isBuilt } from './build';
import { needChromium } from './chromium';
import { generateClient } from './generate-client';
import { finish, run, runSteps, runUnitTests, runWalks, uncounted } from './test-steps';

const counts = await runSteps([
  {
    name: 'lint',
    run: uncounted(() => run('@biomejs/biome/bin/biome', ['check', '--error-on-warnings'])),
  },
  {
    name: 'types',
    run: uncounted(() => {
      generateClient();
      run('next/dist/bin/next', ['typegen']);
      // Not incremental: what an earlier run remembered hides or invents errors about the routes, which are made anew.
      run('typescript/bin/tsc', ['--noEmit', '--incremental', 'false']);
    }),
  },
  { name: 'unit and database tests', run: () => runUnitTests([]) },
  {
    name: 'build',
    run: uncounted(async () => {
      if (isBuilt()) console.log('The pages were built from these very files already.');
      else await build();
    }),
  },
  {
    name: 'browser tests',
    run: () => runWalks({ CHROMIUM_PATH: needChromium() }),
  },
]);

finish(counts);
