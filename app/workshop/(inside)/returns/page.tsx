import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { ShareChart } from '@/app/ui/plots/share-chart';
import { requireStaff } from '@/app/workshop/who';
import { formatMonth } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { may } from '@/lib/people/rules/roles';
import { coverClock } from '@/lib/returns/cover-clock';
import { WATCHED_DAYS } from '@/lib/returns/cover-sql';
import { readLotFigures } from '@/lib/returns/lot-figures';
import { monthCounts } from '@/lib/returns/months';
import { readRepairFigures } from '@/lib/returns/repair-figures';
import { pChart } from '@/lib/returns/rules/p-chart';
import { readWorkshop } from '@/lib/workshop/records';
import { LotsPart } from './parts/lots-part';
import { MoneyPart } from './parts/money-part';
import { RepairsPart } from './parts/repairs-part';
import { WaysIn } from './parts/ways-in';

export const metadata: Metadata = { title: 'Returns' };

const MONTHS = 24;

/** What keeps coming back, and for the owner what it costs: sentences first, figures under them. */
export default async function ReturnsPage() {
  const staff = await requireStaff('returns');
  const at = now();
  const workshop = await readWorkshop();
  const clock = coverClock(workshop, at);
  const [figures, lots, months] = await Promise.all([
    readRepairFigures(workshop, at),
    readLotFigures(clock),
    monthCounts(clock, MONTHS),
  ]);
  const hasCost = may(staff.role, 'returns-cost');
  const { locale } = workshop;
  const chart = pChart(months.map(({ month, watched, returned }) => ({ month, units: watched, returned })));
  return (
    <>
      <PageHead
        title="Returns"
        lead="What came back under its certificate, and how sure one can be. A return is a claim that was ruled covered, wholly or in part."
      />
      {hasCost ? <MoneyPart figures={figures} workshop={workshop} /> : null}
      <LotsPart lots={lots} locale={locale} />
      <RepairsPart figures={figures} workshop={workshop} hasCost={hasCost} />
      <section aria-labelledby="months">
        <h2 id="months">By month of dispatch</h2>
        <p className="max-w-[42rem]">
          {`Units that came back within ${WATCHED_DAYS} days, so that old months and young ones compare. Months whose ${WATCHED_DAYS} days are not over count only the units that were watched that long. Units with shorter cover are never counted.`}
        </p>
        {chart ? (
          <ShareChart
            caption={`Returned within ${WATCHED_DAYS} days, by month of dispatch`}
            chart={chart}
            monthLabel={(month) => formatMonth(month, locale)}
            locale={locale}
          />
        ) : (
          <p>{`No unit with cover of ${WATCHED_DAYS} days has been out for so long yet.`}</p>
        )}
      </section>
      <WaysIn role={staff.role} />
      <p className="mt-8">
        <TextLink href="/workshop/returns/rows">The rows behind every figure</TextLink>
      </p>
    </>
  );
}
