/** A database for one test worker, in a process of its own: `node --import tsx tests/world/embedded-process.ts FOLDER OWNER` */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { startEmbedded } from '@/lib/db/embedded';

const [folder = '', owner = ''] = process.argv.slice(2);
writeFileSync(path.join(folder, 'pid'), String(process.pid));
await startEmbedded(folder);
console.log('open');

// The test run that asked for it may be killed: then nobody stops this process but itself.
setInterval(() => {
  try {
    process.kill(Number(owner), 0);
  } catch {
    process.exit(0);
  }
}, 1000);
