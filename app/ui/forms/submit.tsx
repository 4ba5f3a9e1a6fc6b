'use client';
import type { Route } from 'next';
import { type MouseEvent, type ReactNode, useContext } from 'react';
import { TextLink } from '../page/text-link';
import { FormContext } from './form-context';

type SubmitProps = {
  label: string;
  /** what it acts on, heard and not seen, where the same button stands in every row */
  about?: string | undefined;
  busy?: string | undefined;
  consequence?: ReactNode;
  kind?: 'main' | 'second' | undefined;
  name?: string | undefined;
  value?: string | undefined;
};

/**
 * The button that sends the form, with what it sets off written under it.
 *
 * ```tsx
 * <SubmitButton label="Send the quote" consequence="Sends the customer the quote by e-mail." />
 * <SubmitButton kind="second" name="then" value="another" label="Save and add another" />
 * ```
 */
export function SubmitButton(props: SubmitProps) {
  const { label, about, busy = 'Sending…', consequence, kind = 'main', name, value } = props;
  const { pending } = useContext(FormContext);
  // aria-disabled instead of disabled: the button keeps the focus, and a second press sends nothing.
  const holdBack = (event: MouseEvent) => {
    if (pending) event.preventDefault();
  };
  return (
    <div className="submit">
      <button
        type="submit"
        className={`button button-${kind}`}
        name={name}
        value={value}
        aria-disabled={pending || undefined}
        onClick={holdBack}
      >
        {pending ? busy : label}
        {about ? <span className="sr-only"> {about}</span> : null}
      </button>
      {consequence ? <p className="submit-then">{consequence}</p> : null}
    </div>
  );
}

type SubmitBarProps<T extends string> = SubmitProps & {
  second?: { href: Route<T>; label: string } | undefined;
};

/**
 * The next action of a customer page: at the bottom of the screen on a phone, in reach of the thumb. What it sets off stands
 * above it and moves with the page: a bar with both in it covered the field in focus on a small screen (WCAG 2.2, 2.4.11).
 *
 * ```tsx
 * <SubmitBar label="Continue" consequence="Next: what is wrong with it. Nothing is booked yet."
 *   second={{ href: '/prices', label: 'Back to prices' }} />
 * ```
 */
export function SubmitBar<T extends string>({ second, consequence, ...rest }: SubmitBarProps<T>) {
  return (
    <>
      {consequence ? <p className="submit-then submit-first">{consequence}</p> : null}
      <div className="submit-bar">
        <SubmitButton {...rest} />
      </div>
      {second ? (
        <p className="submit-second">
          <TextLink href={second.href}>{second.label}</TextLink>
        </p>
      ) : null}
    </>
  );
}
