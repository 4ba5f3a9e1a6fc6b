import { Gauge } from 'prom-client';
import { type BackupsView, viewBackups } from '@/lib/backup/records';
import { now } from '@/lib/clock';
import { poolCounts } from '@/lib/db/client';
import { STAGES } from '@/lib/jobs/rules/stages';
import { mailStates } from '@/lib/mail/rules/standing';
import { serving } from '@/lib/serving/serving';
import packageFile from '@/package.json';
import { readStanding, type Standing } from './records';
import { metric, registry } from './registry';

function gauge<Label extends string = never>(
  name: string,
  help: string,
  labelNames: Label[] = [],
): Gauge<Label> {
  return metric(name, () => new Gauge({ name, help, labelNames, registers: [registry()] }));
}

/** Every metric as OpenMetrics text. When the database does not answer, what only it knows is left out of this answer. */
export async function writeMetrics(): Promise<{ text: string; contentType: string }> {
  gauge('mendpost_build_info', 'Version of the program', ['version']).set(
    { version: packageFile.version },
    1,
  );
  gauge('mendpost_requests_open', 'Requests without a finished answer').set(serving.open);
  gauge('mendpost_ready', '1 until the process is told to stop').set(serving.isStopping ? 0 : 1);
  const pool = gauge('mendpost_database_connections', 'Connections of the pool by what they do', ['state']);
  for (const [state, count] of Object.entries(poolCounts())) pool.set({ state }, count);
  const standing = await readStanding().catch(() => undefined);
  gauge('mendpost_database_up', '1 when the database answered for this scrape').set(standing ? 1 : 0);
  showStanding(standing);
  showBackups(await viewBackups(now()).catch(() => undefined));
  return { text: await registry().metrics(), contentType: registry().contentType };
}

function showStanding(standing: Standing | undefined): void {
  const mail = gauge('mendpost_mail', 'Messages by state', ['state']);
  const jobs = gauge('mendpost_jobs', 'Jobs by stage', ['stage']);
  const oldest = gauge('mendpost_mail_oldest_wait_seconds', 'Age of the message that has waited longest');
  for (const each of [mail, jobs]) each.reset();
  oldest.remove();
  if (!standing) return;
  for (const state of mailStates) mail.set({ state }, 0);
  for (const stage of STAGES) jobs.set({ stage }, 0);
  for (const { state, count } of standing.mail) mail.set({ state }, count);
  for (const { stage, count } of standing.jobs) jobs.set({ stage }, count);
  oldest.set(standing.oldestMailSeconds);
}

function showBackups(view: BackupsView | undefined): void {
  const age = gauge('mendpost_backup_age_seconds', 'Age of the newest backup in this folder of backups');
  const missed = gauge('mendpost_backup_missed', '1 when the last night has no backup');
  age.remove();
  missed.remove();
  const newest = view?.backups[0];
  if (newest) age.set(Math.max(0, (now().getTime() - newest.madeAt.getTime()) / 1000));
  if (view?.nightly) missed.set(view.nightly.standing === 'missed' ? 1 : 0);
}
