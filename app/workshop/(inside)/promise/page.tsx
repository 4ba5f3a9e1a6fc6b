import type { Metadata } from 'next';
import { Facts } from '@/app/ui/docket/facts';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { now } from '@/lib/clock';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { type PromiseReport, readBacktest } from '@/lib/promise/read-backtest';
import { type Backtest, shareKept } from '@/lib/promise/rules/backtest';
import { shareInterval } from '@/lib/statistics/share-interval';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Promises' };

export default async function PromisePage() {
  await requireStaff(rolesThatMay('take-in'));
  const [report, workshop] = await Promise.all([readBacktest(now()), readWorkshop()]);
  const percent = percentIn(workshop.locale);
  const used = report.results.find((result) => result.quantile === report.quantile);
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop">Today</TextLink>}
        title="Promises"
        lead="How the promised day is found, and how often it would have been kept on your own jobs."
      />
      <Verdict used={used} report={report} percent={percent} />
      <Facts
        items={[
          { term: 'Aim', text: `${percent(report.quantile)} of units ready by the promised day` },
          { term: 'Finished jobs', text: `${report.finished} in the last 400 days` },
          { term: 'Here now', text: String(report.atWork) },
          {
            term: 'Too few to count',
            text: `below ${report.enough} finished jobs of a repair, then of its family, then of all: the days in the catalogue, an estimate by hand`,
          },
          { term: 'Bench', text: `${workshop.capacityMinutesDay} minutes on a working day` },
        ]}
      />
      <section aria-labelledby="backtest">
        <h2 id="backtest">Had every finished job been promised on its arrival</h2>
        <p className="max-w-[42rem]">
          Each was promised again from what was known that day: jobs finished before it, and the queue it
          found. Days that waited on the customer do not break a promise. A higher aim is kept more often and
          promises later days.
        </p>
        <Table
          caption="Promises kept, by the share they aim at"
          captionHidden
          rows={report.results}
          rowKey={(result) => String(result.quantile)}
          columns={[
            {
              key: 'aim',
              head: 'Aim',
              kind: 'rowhead',
              cell: ({ quantile }) =>
                quantile === report.quantile ? `${percent(quantile)} (in use)` : percent(quantile),
            },
            {
              key: 'kept',
              head: 'Kept',
              kind: 'number',
              cell: ({ counted }) => shareWords(counted, percent),
            },
            {
              key: 'interval',
              head: '95% interval',
              kind: 'number',
              cell: ({ counted }) => intervalWords(counted, percent),
            },
            {
              key: 'of',
              head: 'Promises',
              kind: 'number',
              cell: ({ counted }) => `${counted.kept} of ${counted.promises}`,
            },
            {
              key: 'hand',
              head: 'By hand',
              kind: 'number',
              cell: ({ byHand }) =>
                byHand.promises === 0 ? 'none' : `${byHand.kept} of ${byHand.promises} kept`,
            },
          ]}
        />
        <p className="text-small text-soft">
          The interval says where the true share may well lie (Wilson). By hand: promised from the catalogue,
          while there were too few finished jobs.
        </p>
      </section>
      <section aria-labelledby="move">
        <h2 id="move">When a promise cannot be kept</h2>
        <p className="max-w-[42rem]">
          Open the job and choose “Move the promise”: the customer is told the new day and why. Days that a
          question to the customer waits are put on by themselves.
        </p>
      </section>
    </>
  );
}

type Percent = (share: number) => string;
type Tally = Backtest['counted'];

function percentIn(locale: string): Percent {
  const format = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  return (share) => format.format(share);
}

function shareWords(tally: Tally, percent: Percent): string {
  const share = shareKept(tally);
  return share === null ? 'none made' : percent(share);
}

function intervalWords({ kept, promises }: Tally, percent: Percent): string {
  const interval = shareInterval(kept, promises);
  return interval ? `${percent(interval.low)} to ${percent(interval.high)}` : 'unknown';
}

/** In words whether the aim in use is reached; below the interval's reach nothing is claimed. */
function Verdict(props: { used: Backtest | undefined; report: PromiseReport; percent: Percent }) {
  const { used, report, percent } = props;
  const interval = used && shareInterval(used.counted.kept, used.counted.promises);
  if (!used || !interval) {
    return (
      <Notice kind="note" heading="Too few finished jobs to say">
        <p>{`Days are promised from the catalogue until ${report.enough} jobs are finished.`}</p>
      </Notice>
    );
  }
  const kept = shareWords(used.counted, percent);
  if (interval.high < report.quantile) {
    return (
      <Notice kind="warn" heading="Promises are kept less often than they say">
        <p>{`${kept} were kept where ${percent(report.quantile)} are meant to be. Look at the queue and at the bench minutes in the settings.`}</p>
      </Notice>
    );
  }
  return (
    <p>
      {`${kept} of the promises would have been kept, where ${percent(report.quantile)} are meant to be. Counted on ${used.counted.promises} promises, the true share may well lie between ${percent(interval.low)} and ${percent(interval.high)}.`}
    </p>
  );
}
