/** The embedded database of a run, in a process of its own to be killed: the folder is its only argument. */
import { startEmbedded } from '@/lib/db/embedded';
import { takeLock } from '@/lib/db/lock';

const [folder = ''] = process.argv.slice(2);
const lock = await takeLock(folder, 'a run of faults');
if (!lock.taken) throw new Error(`${folder} is taken`);
const database = await startEmbedded(folder);
process.on('disconnect', () => process.exit(0));
process.on('message', () => void database.stop().then(() => process.exit(0)));
process.send?.('open');
