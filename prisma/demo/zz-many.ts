import { startEmbedded } from '@/lib/db/embedded';
import { config } from '@/lib/config';
const database = await startEmbedded(config.dataDir);
const { migrate } = await import('@/lib/db/migrate');
const { prepareQueue } = await import('@/lib/mail/boss');
const { ensureFirstOwner } = await import('@/lib/people/first-owner');
const { seedDemo } = await import('@/prisma/demo/seed');
const { setMark, clearUnfinished } = await import('@/prisma/demo/unfinished');
const { transaction } = await import('@/lib/db/transaction');
const { db, disconnect } = await import('@/lib/db/client');
await migrate(config.databaseUrl); await prepareQueue(); await ensureFirstOwner();
const { createHash } = await import('node:crypto');
for (const at of (process.env['DATES'] ?? '').split(' ')) {
  const t = performance.now(); const cpu = process.cpuUsage();
  try {
    await seedDemo({ now: new Date(at) });
    const jobs = await db.job.findMany({ select: { number: true, stage: true }, orderBy: { number: 'asc' } });
    const nums = [...jobs.map((j) => j.number + j.stage), ...(await db.claim.findMany({ orderBy: { number: 'asc' } })).map((c) => c.number + c.state + c.ruling + c.isLate), ...(await db.certificate.findMany({ orderBy: [{ number: 'asc' }, { revision: 'asc' }] })).map((c) => c.number + c.revision)];
    const q = (await db.quote.findMany({ orderBy: { number: 'asc' } })).map((x) => x.number).join();
    const late = await db.jobEvent.count({ where: { at: { gt: new Date(at) } } });
    const ends = await db.certificate.findMany({ where: { number: { in: ['W3P6PC8MD', 'WBMEZNFFW', 'WTPQEB754'] } }, select: { number: true, endsOn: true } });
    console.log(at, jobs.length, createHash('sha256').update(nums.join() + q).digest('hex').slice(0, 12), 'late', late, ends.map((e) => e.number + ' ' + e.endsOn.toISOString().slice(0, 10)).join(' '), Math.round(performance.now() - t), 'cpu', process.cpuUsage(cpu).user / 1e6);
  } catch (e) { console.log(at, 'FAILED', e instanceof Error ? e.message : e); }
  await transaction(async (tx) => { await tx.verification.deleteMany(); await setMark(tx); }); await clearUnfinished();
}
await disconnect(); await database.stop();
