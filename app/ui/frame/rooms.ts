import { may, type Permission, type Role } from '@/lib/people/rules/roles';
import type { NavEntry } from './nav-links';

/** The rooms of the workshop in the order of the bar; a room asks for a permission where not everybody may open it. */
const ROOMS: readonly (NavEntry & { for?: Permission })[] = [
  { href: '/workshop', label: 'Today', exact: true },
  { href: '/workshop/quotes', label: 'Quotes' },
  { href: '/workshop/arrivals', label: 'Arrivals' },
  { href: '/workshop/jobs', label: 'Jobs' },
  { href: '/workshop/dispatch', label: 'Dispatch' },
  { href: '/workshop/claims', label: 'Claims' },
  { href: '/workshop/customers', label: 'Customers' },
  { href: '/workshop/money', label: 'Money', for: 'money' },
  { href: '/workshop/parts', label: 'Parts' },
  { href: '/workshop/returns', label: 'Returns', for: 'returns' },
  { href: '/workshop/catalogue', label: 'Catalogue' },
  { href: '/workshop/mail', label: 'Mail', for: 'mail' },
  { href: '/workshop/settings', label: 'Settings', for: 'settings', also: '/workshop/people' },
];

/** The rooms that a role may open: the bar leads nobody to a page that is for others. */
export function roomsOf(role: Role): NavEntry[] {
  return ROOMS.filter((room) => !room.for || may(role, room.for)).map(({ for: _, ...entry }) => entry);
}
