import type { Route } from 'next';
import { redirect } from 'next/navigation';
import { isInvoiceNumber } from '@/lib/invoices/rules/number';
import { placeOf } from '@/lib/jobs/list-jobs-sought';
import { rolesThatMay } from '@/lib/people/rules/roles';
import { requireStaff } from '../../who';

type Props = { searchParams: Promise<{ q?: string | string[] }> };

/** The search box of the bar: leads on and shows nothing itself. */
export default async function SearchPage({ searchParams }: Props) {
  await requireStaff(rolesThatMay('take-in'));
  const typed = String((await searchParams).q ?? '');
  if (isInvoiceNumber(typed.trim())) redirect(`/workshop/money/invoices/${typed.trim()}` as Route);
  const found = await placeOf(typed);
  switch (found.place) {
    case 'job':
      redirect(`/workshop/jobs/${found.number}` as Route);
      break;
    case 'claim':
      redirect(`/workshop/claims/${found.number}` as Route);
      break;
    case 'quote':
      redirect(`/workshop/quotes/${found.number}` as Route);
      break;
    case 'list':
      redirect(`/workshop/jobs?${new URLSearchParams({ q: typed })}` as Route);
  }
}
