import type { Route } from 'next';
import { routeTo } from '@/app/ui/page/route-to';
import type { FoundPlaceKey } from '@/lib/jobs/find-everywhere';

const PATHS = {
  job: '/workshop/jobs/',
  claim: '/workshop/claims/',
  quote: '/workshop/quotes/',
  lot: '/workshop/parts/lots/',
  invoice: '/workshop/money/invoices/',
} as const satisfies Record<FoundPlaceKey | 'claim', string>;

/** The page of what was found: pathOf('job', 'J4K7QX290') -> '/workshop/jobs/J4K7QX290' */
export function pathOf(place: keyof typeof PATHS, key: string): Route {
  return routeTo(`${PATHS[place]}${key}`);
}
