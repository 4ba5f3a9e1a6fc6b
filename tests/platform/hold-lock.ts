/** Takes the lock of a folder and stays, as a running app does: `node --import tsx tests/platform/hold-lock.ts FOLDER` */
import { takeLock } from '@/lib/db/lock';

const lock = await takeLock(process.argv[2] ?? '', 'http://127.0.0.1:3000');
console.log(lock.taken);
setInterval(() => {}, 1000);
