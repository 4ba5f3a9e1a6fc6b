import { BarLoad } from '@/app/ui/plots/bar-load';
import { ShareChart } from '@/app/ui/plots/share-chart';
import { StageDaysPlot } from '@/app/ui/plots/stage-days-plot';
import { formatMonth, formatTick } from '@/lib/calendar/format';
import type { PromiseReport } from '@/lib/promise/read-backtest';
import type { Turnaround } from '@/lib/promise/read-turnaround';
import type { KeptMonth } from '@/lib/promise/rules/kept';
import { pChart } from '@/lib/returns/rules/p-chart';

/** Promises that were made, by the month their day fell in. */
export function KeptByMonth({ months, locale }: { months: readonly KeptMonth[]; locale: string }) {
  const chart = pChart(
    months.map(({ month, promises, kept }) => ({ month, units: promises, returned: kept })),
  );
  const notReady = months.reduce((sum, month) => sum + month.notReady, 0);
  return (
    <section aria-labelledby="months">
      <h2 id="months">Promises kept by month</h2>
      <p className="max-w-[42rem]">
        Each promise whose day has passed, in the month of that day. A unit is judged by the last day it was
        promised for; where you moved that day on your own account, by the one before. One that went back
        unrepaired counts only where the repair was stopped after its day, and then as not kept; a claim that
        went back as not covered does not count.
        {notReady > 0
          ? ` ${notReady} of them ${notReady === 1 ? 'is' : 'are'} still not ready, and count as late.`
          : ''}
      </p>
      {chart ? (
        <ShareChart
          caption="Promises kept by month"
          counted="Kept"
          chart={chart}
          monthLabel={(month) => formatMonth(month, locale)}
          locale={locale}
        />
      ) : (
        <p className="empty">No promised day has passed yet.</p>
      )}
    </section>
  );
}

/** Where units wait, finished and unfinished alike. */
export function StagesPart({ turnaround, locale }: { turnaround: Turnaround; locale: string }) {
  return (
    <section aria-labelledby="stages">
      <h2 id="stages">Where units wait</h2>
      <p className="max-w-[42rem]">
        {`Every stay in a stage of the last ${turnaround.days} days, in calendar days. A stay that goes on counts for as long as it has lasted, so that a slow unit weighs before it is done. A unit that goes back to the bench stays there twice.`}
      </p>
      <StageDaysPlot caption="Days in each stage" stages={turnaround.stages} locale={locale} />
    </section>
  );
}

/** What waited for the bench at the start of each week. */
export function QueuePart(props: { report: PromiseReport; minutesDay: number; locale: string }) {
  const { report, minutesDay, locale } = props;
  return (
    <section aria-labelledby="queue">
      <h2 id="queue">What waits for the bench</h2>
      <p className="max-w-[42rem]">
        Planned hours of the units that were here at the start of each week and did not wait on their
        customer, against what the bench does in five days.
      </p>
      <div className="max-w-[52rem]">
        <BarLoad
          caption="Bench hours waiting, by week"
          hours="Waiting"
          per="Week"
          days={report.queue.map(({ on, minutes }) => ({
            key: on,
            label: formatTick(on, locale, 'month'),
            hours: minutes / 60,
            capacity: (minutesDay * 5) / 60,
          }))}
        />
      </div>
    </section>
  );
}
