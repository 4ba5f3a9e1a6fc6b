import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { readWorkshop } from '@/app/read-workshop';
import { EmptyState } from '@/app/ui/page/empty-state';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { isInvoiceNumber } from '@/lib/invoices/rules/number';
import { FOUND_PLACES, findEverywhere } from '@/lib/jobs/find-everywhere';
import { placeOf } from '@/lib/jobs/list-jobs-sought';
import { soughtFrom } from '@/lib/jobs/rules/sought';
import { may } from '@/lib/people/rules/roles';
import { nearSerials } from '@/lib/warranty/near-serials';
import { NearList } from '../../near-list';
import { emptySentence } from '../../searched-list/list-words';
import { requireStaff } from '../../who';
import { FoundPart } from './found-part';
import { pathOf } from './found-path';

export const metadata: Metadata = { title: 'Find' };

type Props = { searchParams: Promise<{ q?: string | string[] }> };

/** The search box of the bar: a number, and whatever is found alone, leads on; the rest stands here with ways to the lists. */
export default async function SearchPage({ searchParams }: Props) {
  const { role } = await requireStaff('take-in');
  const typed = String((await searchParams).q ?? '').trim();
  if (typed === '') redirect('/workshop/jobs');
  const withInvoices = may(role, 'money');
  if (withInvoices && isInvoiceNumber(typed)) redirect(`/workshop/money/invoices/${typed}`);
  const exact = await placeOf(typed);
  if (exact.place !== 'list') redirect(pathOf(exact.place, exact.number));

  const [rows, { locale, timeZone }] = await Promise.all([
    findEverywhere({ q: typed, withInvoices }),
    readWorkshop(),
  ]);
  const [first, second] = rows;
  if (first && !second) redirect(pathOf(first.place, first.key));
  const near = !first && soughtFrom(typed).kind === 'text' ? await nearSerials(typed, { timeZone }) : null;
  return (
    <>
      <PageHead
        title="Find"
        lead={first ? `What “${typed}” leads to, the newest first.` : `Looked for “${typed}”.`}
      />
      {first ? null : <EmptyState>{emptySentence(typed, EMPTY)}</EmptyState>}
      {near ? <NearList near={near} locale={locale} /> : null}
      {FOUND_PLACES.map((place) => (
        <FoundPart
          key={place}
          place={place}
          rows={rows.filter((row) => row.place === place)}
          q={typed}
          clock={{ locale, timeZone }}
        />
      ))}
      {first ? (
        <p>
          <TextLink href={`/workshop/customers?${new URLSearchParams({ q: typed })}`}>
            {`Customers for “${typed}”`}
          </TextLink>
        </p>
      ) : null}
    </>
  );
}

const EMPTY = {
  nothing: 'Nothing was typed.',
  number: 'The number is spelt right, but nothing here carries it.',
  text: 'Nothing fits. A part of a serial, a name, an e-mail address, a town or a lot’s code is enough, and the last six digits of a telephone number.',
};
