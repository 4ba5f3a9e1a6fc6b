import type { Route } from 'next';
import type { ReactNode } from 'react';
import { TextLink } from './text-link';

type LinkButtonProps<T extends string> = {
  href: Route<T>;
  children: ReactNode;
  kind?: 'main' | 'second' | 'quiet' | undefined;
  file?: boolean | undefined;
};

/**
 * A link that looks like the next action because it is one; `file` for documents.
 *
 * ```tsx
 * <LinkButton href="/book/meridian-4/jack">Book this repair</LinkButton>
 * <LinkButton href={`/slip/${token}.pdf`} kind="second" file>Packing slip (PDF)</LinkButton>
 * ```
 */
export function LinkButton<T extends string>({ href, children, kind = 'main', file }: LinkButtonProps<T>) {
  return (
    <TextLink href={href} file={file} className={`button button-${kind}`}>
      {children}
    </TextLink>
  );
}

/** A plain button for script-only comforts; a form is sent with SubmitButton. */
export function Button(props: {
  children: ReactNode;
  kind?: 'main' | 'second' | 'quiet' | undefined;
  type?: 'submit' | 'button' | undefined;
  onClick?: (() => void) | undefined;
}) {
  return (
    <button
      type={props.type ?? 'button'}
      className={`button button-${props.kind ?? 'second'}`}
      onClick={props.onClick}
    >
      {props.children}
    </button>
  );
}
