import type { ReactNode } from 'react';
import { TextLink } from '../page/text-link';
import { type NavEntry, NavLinks } from './nav-links';

export type LetterheadCard = {
  /** off where customers have no right to withdraw */
  withdrawalRule: string;
  name: string;
  tagline: string;
  email: string;
  phone: string;
  addressLines: readonly string[];
  town: string;
  postcode: string;
};

const LINKS: readonly NavEntry[] = [
  { href: '/prices', label: 'Prices' },
  { href: '/track', label: 'Where is my repair' },
  { href: '/certificate', label: 'Certificate or claim' },
];

/** The frame of every customer page: letterhead above, ways to reach the workshop always in the same place below. */
export function FrontFrame({ workshop, children }: { workshop: LetterheadCard; children: ReactNode }) {
  const { name, tagline, email, phone, withdrawalRule } = workshop;
  const address = [...workshop.addressLines, `${workshop.town} ${workshop.postcode}`.trim()].filter(Boolean);
  return (
    <div className="frame frame-front">
      <a href="#main" className="skip">
        Skip to the page
      </a>
      <header className="letterhead">
        <p className="letterhead-name">
          <TextLink href="/">{name}</TextLink>
        </p>
        {tagline ? <p className="letterhead-line">{tagline}</p> : null}
        <nav aria-label="Main">
          <NavLinks entries={LINKS} />
        </nav>
      </header>
      <main id="main" tabIndex={-1} className="frame-main">
        {children}
      </main>
      <footer className="letterfoot">
        {email || phone ? (
          <section aria-label="How to reach us">
            <h2>Ask {name}</h2>
            <ul>
              {email ? (
                <li>
                  <a href={`mailto:${email}`}>{email}</a>
                </li>
              ) : null}
              {phone ? (
                <li>
                  <a href={`tel:${phone.replaceAll(/[^+\d]/g, '')}`}>{phone}</a>
                </li>
              ) : null}
            </ul>
          </section>
        ) : null}
        {address.length > 0 ? (
          <address>
            {address.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </address>
        ) : null}
        <ul>
          <li>
            <TextLink href="/terms">Terms</TextLink>
          </li>
          <li>
            <TextLink href="/privacy">Privacy</TextLink>
          </li>
          {withdrawalRule === 'off' ? null : (
            <li>
              <TextLink href="/withdrawal">Withdrawing from a contract</TextLink>
            </li>
          )}
        </ul>
      </footer>
    </div>
  );
}
