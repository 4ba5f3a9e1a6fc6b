import type { Route } from 'next';

/**
 * An address that is kept before it is linked to, checked against the pages here: `/c/${code}` as a Route. What is given to a
 * link or to redirect() right away is checked there.
 */
export function routeTo<T extends string>(href: Route<T>): Route {
  // A name in it is any text to the types, so what was checked is no longer known to be a page.
  return href as Route;
}
