import type { Route } from 'next';
import Link from 'next/link';
import type { ReactNode } from 'react';

type TextLinkProps<T extends string> = {
  href: Route<T>;
  children: ReactNode;
  className?: string | undefined;
  file?: boolean | undefined;
  current?: boolean | undefined;
};

/**
 * A link inside the house. `file` for a PDF or CSV, which must not be fetched as a page.
 * Nothing is fetched ahead: every page is made on request, and a phone with a weak signal pays for each one.
 *
 * ```tsx
 * <TextLink href={`/workshop/jobs/${job.number}`}>J-4K7Q-X29D</TextLink>
 * <TextLink href={`/slip/${token}.pdf`} file>Packing slip (PDF)</TextLink>
 * ```
 */
export function TextLink<T extends string>({ href, file, current, children, ...rest }: TextLinkProps<T>) {
  if (file) {
    return (
      <a href={href} {...rest}>
        {children}
      </a>
    );
  }
  return (
    <Link href={href} prefetch={false} aria-current={current ? 'page' : undefined} {...rest}>
      {children}
    </Link>
  );
}
