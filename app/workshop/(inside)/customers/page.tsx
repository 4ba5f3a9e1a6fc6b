import type { Metadata } from 'next';
import { PageHead } from '@/app/ui/page/page-head';
import { pageNumber } from '@/app/ui/page/page-number';
import { Pager } from '@/app/ui/page/pager';
import { SearchBox } from '@/app/ui/page/search-box';
import { Table } from '@/app/ui/page/table';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { findPeople, PEOPLE_PER_PAGE } from '@/lib/keeping/records';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { readWorkshop } from '@/lib/workshop/records';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Customers' };

type Search = { q?: string | string[]; page?: string | string[] };

export default async function CustomersPage({ searchParams }: { searchParams: Promise<Search> }) {
  await requireStaff(rolesThatMay('take-in'));
  const search = await searchParams;
  const q = String(search.q ?? '').trim();
  const page = pageNumber(search.page);
  const [{ people, total }, workshop] = await Promise.all([findPeople({ q, page }), readWorkshop()]);
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <>
      <PageHead title="Customers" lead={leadOf(q, total)} />
      <div className="mb-6 max-w-[42rem]">
        <SearchBox
          action="/workshop/customers"
          label="Name or e-mail"
          defaultValue={q}
          id="find-customer"
          button="Search"
        />
      </div>
      <Table
        caption="Customers, newest first"
        captionHidden
        rows={people}
        rowKey={(person) => person.email}
        empty={q === '' ? 'Nobody has written yet.' : 'No name or e-mail address holds this.'}
        columns={[
          {
            key: 'name',
            head: 'Name',
            kind: 'rowhead',
            cell: (person) => (
              <TextLink href={`/workshop/customers/${person.number}`}>{person.name}</TextLink>
            ),
          },
          { key: 'email', head: 'E-mail', cell: (person) => person.email },
          { key: 'jobs', head: 'Jobs', kind: 'number', cell: (person) => person.jobs },
          { key: 'quotes', head: 'Prices asked for', kind: 'number', cell: (person) => person.quotes },
          { key: 'last', head: 'Last', cell: (person) => formatInstant(person.lastAt, clock) },
        ]}
      />
      <Pager
        page={page}
        pages={Math.ceil(total / PEOPLE_PER_PAGE)}
        href={(other) =>
          `/workshop/customers?${new URLSearchParams({ ...(q && { q }), page: String(other) })}`
        }
      />
    </>
  );
}

function leadOf(q: string, total: number): string {
  const people = total === 1 ? '1 person' : `${total} people`;
  return q === '' ? `${people}, each under one e-mail address.` : `${people} for “${q}”.`;
}
