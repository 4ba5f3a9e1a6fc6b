/**
 * `npm run test:faults`: kills the app, its database and both in the middle of bookings, dispatches and mails, on the
 * embedded database and on a PostgreSQL server, and checks that nothing acknowledged is lost and nothing is left by half.
 *
 * `-- --rounds 20 --jobs 2000 --database embedded|server --seed N`; `-- --short` takes seconds; `-- --start` kills what
 * `npm start` starts instead, while customers book over HTTP (`--port`, else 3370).
 */
import { parseArgs } from 'node:util';
import { build, isBuilt } from './build';
import type { Kind } from './faults/database';
import { runKills } from './faults/kill-run';
import { runStartKills } from './faults/start-kills';

process.noDeprecation = true;
const { values } = parseArgs({
  options: {
    rounds: { type: 'string', default: '20' },
    jobs: { type: 'string', default: '2000' },
    hands: { type: 'string', default: '6' },
    database: { type: 'string' },
    seed: { type: 'string' },
    short: { type: 'boolean', default: false },
    start: { type: 'boolean', default: false },
    port: { type: 'string', default: '3370' },
  },
});
if (values.start) {
  if (!isBuilt()) await build();
  const tell = (line: string) => console.log(`  ${line}`);
  const problems = await runStartKills({ port: Number(values.port), rounds: values.short ? 3 : 6, tell });
  for (const problem of problems) console.error(`  ${problem}`);
  console.log(`  ${problems.length} problems`);
  process.exit(problems.length > 0 ? 1 : 0);
}
const kinds: Kind[] =
  values.database === 'embedded' || values.database === 'server' ? [values.database] : ['embedded', 'server'];
const seed = Number(values.seed ?? Math.floor(Math.random() * 1_000_000));
let failed = 0;
for (const kind of kinds) {
  const rounds = values.short ? 3 : Number(values.rounds);
  const jobs = values.short ? 12 : Number(values.jobs);
  console.log(`${kind}: ${jobs} jobs, ${rounds} kills, seed ${seed}`);
  const began = performance.now();
  const { problems, facts } = await runKills({
    kind,
    rounds,
    jobs,
    seed,
    hands: Number(values.hands),
    tell: (line) => console.log(`  ${line}`),
  });
  for (const problem of problems.slice(0, 50)) console.error(`  ${problem}`);
  console.log(
    `  ${Object.entries(facts)
      .map(([name, many]) => `${name} ${many}`)
      .join(', ')}`,
  );
  console.log(`  ${problems.length} problems, ${Math.round((performance.now() - began) / 1000)} s`);
  failed += problems.length;
}
process.exit(failed > 0 ? 1 : 0);
