import type { ReactNode } from 'react';
import { SearchBox } from '../page/search-box';
import { TextLink } from '../page/text-link';
import { type NavEntry, NavLinks, NavMenu } from './nav-links';
import { SessionWatch } from './session-watch';

const LINKS: readonly NavEntry[] = [
  { href: '/workshop', label: 'Today', exact: true },
  { href: '/workshop/quotes', label: 'Quotes' },
  { href: '/workshop/arrivals', label: 'Arrivals' },
  { href: '/workshop/jobs', label: 'Jobs' },
  { href: '/workshop/dispatch', label: 'Dispatch' },
  { href: '/workshop/claims', label: 'Claims' },
  { href: '/workshop/customers', label: 'Customers' },
  { href: '/workshop/money', label: 'Money' },
  { href: '/workshop/parts', label: 'Parts' },
  { href: '/workshop/returns', label: 'Returns' },
  { href: '/workshop/catalogue', label: 'Catalogue' },
  { href: '/workshop/mail', label: 'Mail' },
  { href: '/workshop/settings', label: 'Settings' },
];

/** The frame of every workshop page: one search box, the rooms, and who is signed in. */
export function StaffFrame({
  workshopName,
  personName,
  secondsLeft,
  children,
}: {
  workshopName: string;
  personName: string;
  /** until the session ends if nothing more is clicked */
  secondsLeft: number;
  children: ReactNode;
}) {
  return (
    <div className="frame frame-staff">
      <a href="#main" className="skip">
        Skip to the page
      </a>
      <header className="benchbar">
        <p className="benchbar-name">
          <TextLink href="/workshop">{workshopName}</TextLink>
        </p>
        <SearchBox
          action="/workshop/search"
          label="Find by number, serial, name or telephone"
          placeholder="Number, serial, name, telephone"
          button="Find"
          id="find-anything"
          mono
          small
        />
        <p className="benchbar-person">
          <TextLink href="/workshop/account">{personName}</TextLink>
        </p>
        <nav aria-label="Workshop" className="benchbar-nav">
          <NavMenu entries={LINKS} label="Menu" />
          <NavLinks entries={LINKS} />
        </nav>
      </header>
      <SessionWatch secondsLeft={secondsLeft} />
      <main id="main" tabIndex={-1} className="frame-main">
        {children}
      </main>
    </div>
  );
}
