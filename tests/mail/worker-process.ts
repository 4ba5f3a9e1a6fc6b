/** A worker in a process of its own, to be killed: `node --import tsx tests/mail/worker-process.ts SMTP_URL` */
import { openWorker } from '@/lib/mail/worker';

const [smtpUrl = ''] = process.argv.slice(2);
await openWorker({ smtpUrl, pollSeconds: 0.5 });
process.send?.('working');
