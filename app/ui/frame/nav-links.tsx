'use client';
import type { Route } from 'next';
import { usePathname } from 'next/navigation';
import { TextLink } from '../page/text-link';

export type NavEntry = {
  href: Route;
  label: string;
  exact?: boolean;
  /** the beginning of other pages that belong to it */
  also?: string;
};

/**
 * The links of a frame; the one that leads to the present page carries aria-current.
 *
 * ```tsx
 * <NavLinks entries={[{ href: '/prices', label: 'Prices' }]} />
 * ```
 */
export function NavLinks({ entries }: { entries: readonly NavEntry[] }) {
  const path = usePathname();
  return (
    <ul className="nav-links">
      {entries.map((entry) => (
        <li key={entry.href}>
          <TextLink href={entry.href} current={isHere(path, entry)}>
            {entry.label}
          </TextLink>
        </li>
      ))}
    </ul>
  );
}

/** The same links behind a word, for a narrow screen; opens without script and closes when the page changes. */
export function NavMenu({ entries, label }: { entries: readonly NavEntry[]; label: string }) {
  const path = usePathname();
  const here = entries.find((entry) => isHere(path, entry));
  return (
    <details className="nav-menu" key={path}>
      <summary>
        {label}
        {here ? <span className="nav-here">: {here.label}</span> : null}
      </summary>
      <NavLinks entries={entries} />
    </details>
  );
}

function isHere(path: string, entry: NavEntry): boolean {
  const roots = [entry.href, ...(entry.also === undefined ? [] : [entry.also])];
  return roots.some((root) => path === root || (!entry.exact && path.startsWith(`${root}/`)));
}
