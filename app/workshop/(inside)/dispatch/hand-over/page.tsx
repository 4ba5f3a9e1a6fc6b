import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { NumberText } from '@/app/ui/words/number-text';
import { day, isDay } from '@/lib/calendar/day';
import { formatDay, formatInstant } from '@/lib/calendar/format';
import { now } from '@/lib/clock';
import { showNumber } from '@/lib/numbers/job-number';
import { listDispatch } from '@/lib/parcels/list-dispatch';
import { kilogramText } from '@/lib/parcels/rules/measures';
import { requireStaff } from '../../../who';

export const metadata: Metadata = { title: 'Hand-over list' };

type Props = { searchParams: Promise<{ carrier?: string | string[]; day?: string | string[] }> };

/** What one carrier was given on one day, to print and have signed. */
export default async function HandOverPage({ searchParams }: Props) {
  await requireStaff('dispatch');
  const asked = await searchParams;
  const carrier = String(asked.carrier ?? '');
  const on = String(asked.day ?? '');
  const [list, workshop] = await Promise.all([
    listDispatch({ now: now(), day: isDay(on) ? day(on) : null }),
    readWorkshop(),
  ]);
  const { locale, timeZone } = workshop;
  const rows = list.sent.find((each) => each.carrier === carrier)?.rows ?? [];
  const shownDay = formatDay(isDay(on) ? day(on) : list.today, locale, 'weekday');
  return (
    <>
      <PageHead
        above={<TextLink href="/workshop/dispatch">Dispatch</TextLink>}
        title={carrier === '' ? 'Hand-over list' : `Hand-over list: ${carrier}`}
        lead={`${workshop.name}, ${shownDay}. Print this page, and let the driver sign it.`}
      />
      <Table
        caption={`${rows.length} ${rows.length === 1 ? 'parcel' : 'parcels'}`}
        rows={rows}
        rowKey={(row) => row.number}
        empty="This carrier was given nothing on this day."
        keep
        columns={[
          { head: 'Job', kind: 'rowhead', cell: (row) => <NumberText text={showNumber(row.number)} /> },
          { head: 'Carrier’s reference', cell: (row) => <NumberText text={row.reference} /> },
          { head: 'To', cell: (row) => `${row.customer}, ${row.town}, ${row.country}` },
          {
            head: 'Weight',
            kind: 'number',
            cell: (row) => (row.grams === null ? '' : kilogramText(row.grams)),
          },
          {
            head: 'Packed at',
            cell: (row) => (row.sentAt ? formatInstant(row.sentAt, { locale, zone: timeZone }) : ''),
          },
        ]}
      />
      {rows.length === 0 ? null : (
        <dl className="mt-12 grid grid-cols-2 gap-x-8 gap-y-10">
          {['Handed over by', 'Taken over by', 'Day and time', 'Signature'].map((term) => (
            <div key={term} className="border-t border-edge">
              <dt className="text-small text-soft">{term}</dt>
              <dd> </dd>
            </div>
          ))}
        </dl>
      )}
    </>
  );
}
