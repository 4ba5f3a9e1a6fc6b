import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { type PromiseReport, readBacktest } from '@/lib/promise/read-backtest';
import { readTurnaround } from '@/lib/promise/read-turnaround';
import type { Backtest } from '@/lib/promise/rules/backtest';
import { intervalWords, percentWords } from '@/lib/returns/rules/share-words';
import { shareInterval } from '@/lib/statistics/share-interval';
import { requireStaff } from '../../who';
import { Aims, keptWords } from './aims';
import { KeptByMonth, QueuePart, StagesPart } from './past';

export const metadata: Metadata = { title: 'Promises' };

export default async function PromisePage() {
  const who = await requireStaff('take-in');
  const at = now();
  const workshop = await readWorkshop();
  const [report, turnaround] = await Promise.all([readBacktest(at), readTurnaround(at, workshop)]);
  const { locale } = workshop;
  const used = report.results.find((result) => result.quantile === report.quantile);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop">Today</TextLink>}
        title="Promises"
        lead="How the promised day is found, and how often it would have been kept on your own jobs."
      />
      <Verdict used={used} report={report} locale={locale} />
      <Facts
        items={[
          {
            term: 'Aim',
            text: `${percentWords(report.quantile, locale)} of units ready by the promised day`,
          },
          { term: 'Finished jobs', text: `${report.finished} in the last 400 days` },
          { term: 'Here now', text: String(report.atWork) },
          {
            term: 'Too few to count',
            text: `below ${report.enough} finished jobs of a repair, then of its family, then of all: the days in the catalogue, an estimate by hand`,
          },
          { term: 'Bench', text: `${workshop.capacityMinutesDay} minutes on a working day` },
        ]}
      />
      <KeptByMonth months={turnaround.months} locale={locale} />
      <Aims report={report} locale={locale} maySet={may(who.role, 'settings')} />
      <StagesPart turnaround={turnaround} locale={locale} />
      <QueuePart report={report} minutesDay={workshop.capacityMinutesDay} locale={locale} />
      <section aria-labelledby="move">
        <h2 id="move">When a promise cannot be kept</h2>
        <p className="max-w-[42rem]">
          Open the job and choose “Move the promise”: the customer is told the new day and why. Days that a
          question to the customer waits are put on by themselves.
        </p>
        <p>
          <TextLink href="/workshop/promise/move">Promises to move</TextLink>: after a closure or a week lost,
          all that cannot be kept, with a new day for each.
        </p>
      </section>
    </>
  );
}

/** In words whether the aim in use is reached; below the interval's reach nothing is claimed. */
function Verdict(props: { used: Backtest | undefined; report: PromiseReport; locale: string }) {
  const { used, report, locale } = props;
  const percent = (share: number) => percentWords(share, locale);
  const interval = used && shareInterval(used.counted.kept, used.counted.promises);
  if (!used || !interval) {
    return (
      <Notice kind="note" heading="Too few finished jobs to say">
        <p>{`Days are promised from the catalogue until ${report.enough} jobs are finished.`}</p>
      </Notice>
    );
  }
  const kept = keptWords(used.counted, locale);
  if (interval.high < report.quantile) {
    return (
      <Notice kind="warn" heading="Promises are kept less often than they say">
        <p>{`${kept} of ${used.counted.promises} (${intervalWords(interval, locale)}) would have been kept where ${percent(report.quantile)} are meant to be. Look at the queue and at the bench minutes in the settings.`}</p>
      </Notice>
    );
  }
  return (
    <p>
      {`${kept} of the promises would have been kept, where ${percent(report.quantile)} are meant to be. Counted on ${used.counted.promises === 1 ? '1 promise' : `${used.counted.promises} promises`}, the true share may well lie between ${percent(interval.low)} and ${percent(interval.high)}.`}
    </p>
  );
}
