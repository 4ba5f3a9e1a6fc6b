import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import type { PromiseReport } from '@/lib/promise/read-backtest';
import { type Backtest, shareKept } from '@/lib/promise/rules/backtest';
import { intervalWords, percentWords } from '@/lib/returns/rules/share-words';
import { shareInterval } from '@/lib/statistics/share-interval';

type Props = { report: PromiseReport; locale: string; maySet: boolean };

/** What each aim would have come to on the workshop's own jobs. */
export function Aims({ report, locale, maySet }: Props) {
  return (
    <section aria-labelledby="backtest">
      <h2 id="backtest">Had each job been promised on its arrival</h2>
      <p className="max-w-[42rem]">
        {`The last ${report.tested} were promised again from what was known that day: jobs finished before it, and the queue it found. Days that waited on the customer do not break a promise. A higher aim is kept more often and promises later days.`}
      </p>
      {maySet ? (
        <p>
          <TextLink href="/workshop/settings/days">Choose another aim</TextLink>
        </p>
      ) : null}
      <Table
        caption="Promises kept, by the share they aim at"
        captionHidden
        rows={report.results}
        rowKey={(result) => String(result.quantile)}
        columns={[
          {
            head: 'Aim',
            kind: 'rowhead',
            cell: ({ quantile }) =>
              quantile === report.quantile
                ? `${percentWords(quantile, locale)} (in use)`
                : percentWords(quantile, locale),
          },
          { head: 'Kept', kind: 'number', cell: ({ counted }) => keptWords(counted, locale) },
          { head: '95% interval', kind: 'number', cell: ({ counted }) => betweenWords(counted, locale) },
          {
            head: 'Promises',
            kind: 'number',
            cell: ({ counted }) => `${counted.kept} of ${counted.promises}`,
          },
          {
            head: 'By hand',
            kind: 'number',
            cell: ({ byHand }) =>
              byHand.promises === 0 ? 'none' : `${byHand.kept} of ${byHand.promises} kept`,
          },
          { head: 'Not due yet', kind: 'number', cell: ({ notDue }) => notDue },
        ]}
      />
      <p className="text-small text-soft">
        A unit that is still here past its day counts as late; one whose day lies ahead is not counted, ready
        or not. The interval says where the true share may well lie (Wilson). By hand: promised from the
        catalogue, while there were too few finished jobs.
      </p>
    </section>
  );
}

export function keptWords(tally: Backtest['counted'], locale: string): string {
  const share = shareKept(tally);
  return share === null ? 'none made' : percentWords(share, locale);
}

export function betweenWords({ kept, promises }: Backtest['counted'], locale: string): string {
  const interval = shareInterval(kept, promises);
  return interval ? intervalWords(interval, locale) : 'unknown';
}
