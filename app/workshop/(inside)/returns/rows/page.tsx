import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { type Column, Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { NumberLink } from '@/app/workshop/number-link';
import { requireStaff } from '@/app/workshop/who';
import { formatDay, formatMonth } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { formatMoney } from '@/lib/money/amount';
import { showNumber } from '@/lib/numbers/job-number';
import { pageOf } from '@/lib/numbers/page-of';
import { coverClock } from '@/lib/returns/cover-clock';
import { nameOf } from '@/lib/returns/names';
import { type CoverRow, countRows, ROWS_PER_PAGE, readRows } from '@/lib/returns/read-rows';
import { CAUSE_TABLE } from '@/lib/warranty/rules/causes';
import { readWorkshop } from '@/lib/workshop/records';
import { depthOf, narrowingOf, permissionFor, queryOf, readRowsAsked } from './narrowing';

export const metadata: Metadata = { title: 'Rows behind the figures' };

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> };

/** Every cover line that a figure stands on, newest first. */
export default async function RowsPage({ searchParams }: Props) {
  const search = await searchParams;
  const asked = readRowsAsked(search);
  const staff = await requireStaff(permissionFor(asked.by));
  const workshop = await readWorkshop();
  const { locale, currency } = workshop;
  const clock = coverClock(workshop, now());
  const narrowing = narrowingOf(asked);
  const count = await countRows(clock, narrowing);
  const { page, pages, skip, take } = pageOf(count.rows, {
    page: pageNumber(search['page']),
    size: ROWS_PER_PAGE,
  });
  const [rows, name] = await Promise.all([
    readRows(clock, narrowing, { skip, take }),
    narrowing.of ? nameOf(narrowing.of.grouping, narrowing.of.id) : null,
  ]);
  const { hasCost, hasPeople } = depthOf(staff.role, currency);
  const short = (at: CoverRow['issuedOn']) => formatDay(at, locale, 'short');
  const columns: Column<CoverRow>[] = [
    {
      head: 'Job and line',
      kind: 'rowhead',
      cell: (row) => (
        <>
          <NumberLink of="jobs" number={row.jobNumber} />
          <span className="block">{row.description}</span>
        </>
      ),
    },
    { head: 'Repair and model', cell: (row) => `${row.repair}, ${row.model}` },
    { head: 'Lot', cell: (row) => (row.lot ? `${row.lot}, ${row.supplier ?? ''}` : 'work') },
    {
      head: 'Sent back',
      cell: (row) => (
        <>
          {short(row.issuedOn)}
          <span className="block">
            <TextLink href={`/workshop/certificate/${row.certificateId}`} file>
              <NumberText text={showNumber(row.certificate)} />
            </TextLink>
          </span>
        </>
      ),
    },
    { head: 'Watched until', cell: (row) => `${short(row.observedUntil)}, ${row.daysAtRisk} days` },
    {
      head: 'Came back',
      cell: (row) =>
        row.claimNumber && row.returnedOn ? (
          <>
            {`${short(row.returnedOn)}, ${causeLabel(row.cause)} `}
            <NumberLink of="claims" number={row.claimNumber} />
          </>
        ) : (
          'no'
        ),
    },
    ...(hasCost ? [costColumn(currency, locale)] : []),
    ...(hasPeople ? [{ head: 'Most of the work by', cell: (row: CoverRow) => row.technician ?? '' }] : []),
  ];
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/returns">Returns</TextLink>}
        title="Rows behind the figures"
        lead={`${leadOf(asked, name, locale)} ${count.rows === 1 ? '1 cover line' : `${count.rows} cover lines`} of ${count.units === 1 ? '1 unit' : `${count.units} units`}, of which ${count.returned} came back.`}
      >
        <a href={`/workshop/returns/rows.csv${queryOf(asked)}`} download>
          All of them as a file (CSV)
        </a>
        {asked.only ? (
          <TextLink href={`/workshop/returns/rows${queryOf({ ...asked, only: undefined })}`}>
            Show those that stayed well too
          </TextLink>
        ) : (
          <TextLink href={`/workshop/returns/rows${queryOf({ ...asked, only: 'returns' })}`}>
            Only what came back
          </TextLink>
        )}
      </PageHead>
      <Table
        caption="Cover lines, newest certificate first"
        captionHidden
        rows={rows}
        rowKey={(row) => `${row.certificate}/${row.key}`}
        empty="No cover line is like that."
        columns={columns}
      />
      <Pager
        page={page}
        pages={pages}
        href={(other) => `/workshop/returns/rows${queryOf(asked, { page: String(other) })}`}
      />
    </>
  );
}

function costColumn(currency: string, locale: string): Column<CoverRow> {
  return {
    head: 'Claims cost',
    kind: 'number',
    cell: ({ returnedOn, costMinor }) =>
      returnedOn === null
        ? ''
        : costMinor === null
          ? 'not recorded yet'
          : formatMoney(costMinor, currency, locale),
  };
}

function leadOf(asked: ReturnType<typeof readRowsAsked>, name: string | null, locale: string): string {
  const parts = [
    asked.by && asked.id
      ? `Of ${asked.by === 'technician' ? 'work by ' : ''}${name ?? 'something that is not there'}.`
      : '',
    asked.month ? `Sent back in ${formatMonth(asked.month, locale, 'long')}.` : '',
    asked.only ? 'Only what came back.' : '',
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(' ') : 'Everything that was sent back with a certificate.';
}

function causeLabel(cause: string | null): string {
  return CAUSE_TABLE.find((row) => row.cause === cause)?.label.toLowerCase() ?? 'no cause kept';
}
