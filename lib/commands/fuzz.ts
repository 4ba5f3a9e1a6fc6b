/**
 * `npm run fuzz [-- --requests 20000 --seed 1 --port 3360 --server]`: hostile requests against the running app, as
 * nobody, as somebody with private links, and as each member of staff. Fails on an error of the server, an answer that
 * does not come, markup or headers of the caller's making, and rows that should not be there. The same seed asks much the same: a form holds what others have left by then.
 */
import { parseArgs } from 'node:util';
import { startFuzzApp } from './fuzz/app';

const { values } = parseArgs({
  options: {
    requests: { type: 'string', default: '20000' },
    seed: { type: 'string', default: String(Math.floor(performance.timeOrigin) % 1_000_000) },
    port: { type: 'string', default: '3360' },
    server: { type: 'boolean', default: false },
  },
});
const wanted = Number(values.requests);
const seed = Number(values.seed);
const app = await startFuzzApp({ port: Number(values.port), onServer: values.server });
let faults: string[] = [];
let isStopped = false;
// Asked to end, it sends no more and tells what was found until then.
process.once('SIGTERM', () => {
  isStopped = true;
});
try {
  const { attack } = await import('./fuzz/attack');
  console.log(`\n${wanted} hostile requests, seed ${seed}`);
  faults = await attack({
    origin: app.origin,
    hasEnded: app.hasEnded,
    isStopped: () => isStopped,
    wanted,
    seed,
  });
} catch (error) {
  faults.push(error instanceof Error ? (error.stack ?? error.message) : String(error));
} finally {
  await app.stop();
}
for (const fault of faults) console.error(`- ${fault}`);
console.log(faults.length === 0 ? 'No fault found.' : `${faults.length} kinds of fault, seed ${seed}.`);
process.exit(faults.length === 0 ? 0 : 1);
