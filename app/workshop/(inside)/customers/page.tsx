import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { TextLink } from '@/app/ui/page/text-link';
import { formatInstant } from '@/lib/calendar/format';
import { findPeople, PEOPLE_PER_PAGE } from '@/lib/keeping/records';
import { type ListSearch, listedAt } from '../../searched-list/list-address';
import { SearchedList } from '../../searched-list/searched-list';
import { requireStaff } from '../../who';

export const metadata: Metadata = { title: 'Customers' };

export default async function CustomersPage({ searchParams }: { searchParams: ListSearch }) {
  await requireStaff('take-in');
  const listed = await listedAt('/workshop/customers', searchParams);
  const { q } = listed;
  const [{ people, total, page }, workshop] = await Promise.all([findPeople(listed), readWorkshop()]);
  const clock = { locale: workshop.locale, zone: workshop.timeZone };
  return (
    <SearchedList
      title="Customers"
      lead={leadOf(q, total)}
      listed={{ ...listed, page }}
      search={{ id: 'find-customer', label: 'Name, e-mail, telephone, postcode or town' }}
      total={total}
      perPage={PEOPLE_PER_PAGE}
      table={{
        caption: 'Customers, newest first',
        rows: people,
        rowKey: (person) => person.email,
        empty:
          q === ''
            ? 'Nobody has written yet.'
            : 'No name, e-mail address, telephone number, postcode or town holds this.',
        columns: [
          {
            head: 'Name',
            kind: 'rowhead',
            cell: (person) => (
              <TextLink href={`/workshop/customers/${person.number}`}>{person.name}</TextLink>
            ),
          },
          { head: 'E-mail', cell: (person) => person.email },
          { head: 'Jobs', kind: 'number', cell: (person) => person.jobs },
          { head: 'Prices asked for', kind: 'number', cell: (person) => person.quotes },
          { head: 'Last', cell: (person) => formatInstant(person.lastAt, clock) },
        ],
      }}
    />
  );
}

function leadOf(q: string, total: number): string {
  const people = total === 1 ? '1 person' : `${total} people`;
  return q === '' ? `${people}, each under one e-mail address.` : `${people} for “${q}”.`;
}
