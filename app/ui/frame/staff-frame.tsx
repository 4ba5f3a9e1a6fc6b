import type { ReactNode } from 'react';
import type { Role } from '@/lib/people/rules/roles';
import { SearchBox } from '../page/search-box';
import { TextLink } from '../page/text-link';
import { NavLinks, NavMenu } from './nav-links';
import { roomsOf } from './rooms';
import { SessionWatch } from './session-watch';

/** The frame of every workshop page: one search box, the rooms that the person may open, and who is signed in. */
export function StaffFrame({
  workshopName,
  personName,
  role,
  secondsLeft,
  children,
}: {
  workshopName: string;
  personName: string;
  role: Role;
  /** until the session ends if nothing more is clicked */
  secondsLeft: number;
  children: ReactNode;
}) {
  const rooms = roomsOf(role);
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
          placeholder="Number, serial, name"
          button="Find"
          id="find-anything"
          mono
          small
        />
        <p className="benchbar-person">
          <TextLink href="/workshop/account">{personName}</TextLink>
        </p>
        <nav aria-label="Workshop" className="benchbar-nav">
          <NavMenu entries={rooms} label="Menu" />
          <NavLinks entries={rooms} />
        </nav>
      </header>
      <SessionWatch secondsLeft={secondsLeft} />
      <main id="main" tabIndex={-1} className="frame-main">
        {children}
      </main>
    </div>
  );
}
