import type { Route } from 'next';
import { TextLink } from './text-link';

type PagerProps = {
  page: number;
  pages: number;
  href: (page: number) => Route;
};

/**
 * Earlier and later pages of a list; draws nothing when there is only one. Pages count from 1.
 *
 * ```tsx
 * <Pager page={2} pages={7} href={(page) => `/workshop/jobs?page=${page}`} />
 * ```
 */
export function Pager({ page, pages, href }: PagerProps) {
  if (pages <= 1) return null;
  return (
    <nav className="pager" aria-label="Pages of this list">
      {page > 1 ? <TextLink href={href(page - 1)}>Page {page - 1}</TextLink> : <span />}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages ? <TextLink href={href(page + 1)}>Page {page + 1}</TextLink> : <span />}
    </nav>
  );
}
