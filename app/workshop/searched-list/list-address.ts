import type { Route } from 'next';
import { pageNumber } from '@/app/ui/page/page-number';

export type Listed = {
  path: '/workshop/jobs' | '/workshop/quotes' | '/workshop/customers';
  /** what was searched for; empty for everything */
  q: string;
  /** from 1 */
  page: number;
  /** the part that is chosen, by the name it has in the address */
  part?: readonly [name: string, value: string | null];
};

export type ListSearch = Promise<Record<string, string | string[] | undefined>>;

/** What of a list an address asks for. */
export async function listedAt(path: Listed['path'], searchParams: ListSearch): Promise<Listed> {
  const { q, page } = await searchParams;
  return { path, q: String(q ?? '').trim(), page: pageNumber(page) };
}

/**
 * The address of a page of a list; what stands for everything is left out.
 *
 * listAddress({ path: '/workshop/jobs', q: 'holt', page: 1, part: ['stage', null] }) -> '/workshop/jobs?q=holt'
 */
export function listAddress({ path, q, page, part: [name, value] = ['', null] }: Listed): Route {
  const search = new URLSearchParams({
    ...(value !== null && { [name]: value }),
    ...(q !== '' && { q }),
    ...(page !== 1 && { page: String(page) }),
  });
  return search.size === 0 ? path : `${path}?${search}`;
}
