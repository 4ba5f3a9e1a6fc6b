import { dayFromDate } from '@/lib/calendar/day';
import type { Tx } from '@/lib/db/transaction';
import { type JobRecord, readJob } from '@/lib/jobs/records';
import type { FactsOf } from '@/lib/mail/rules/content';
import { balanceOf, isForPrice } from './rules/balance';

type MoneyFacts = Pick<FactsOf<'approval-recorded'>, 'balance' | 'replaced'>;

/**
 * What an answer made of a job's money, as facts of its mail: the invoices that were credited and issued since `before` was
 * read, and what is left to pay. Nothing where neither was paid nor invoiced before.
 */
export async function moneyFactsSince(tx: Tx, before: JobRecord): Promise<MoneyFacts> {
  if (before.invoices.length === 0 && !before.payments.some(isForPrice)) return {};
  const job = await readJob({ id: before.id }, tx);
  if (!job) throw new Error('a job that was answered is not there');
  const balance = balanceOf(job).owed;
  const written = job.invoices.filter(({ id }) => before.invoices.every((old) => old.id !== id));
  if (written.length === 0) return { balance };
  const credited = written
    .filter(({ kind }) => kind === 'credit-note')
    .map(({ correctsId }) => before.invoices.find(({ id }) => id === correctsId)?.number ?? '');
  const issued = written.find(({ kind }) => kind === 'invoice');
  const dueOn = issued && balance > 0 ? { dueOn: dayFromDate(issued.dueOn) } : {};
  return { balance, replaced: { credited, ...(issued && { invoice: { number: issued.number, ...dueOn } }) } };
}
