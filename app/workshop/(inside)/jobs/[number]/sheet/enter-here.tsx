'use client';
import type { KeyboardEvent, ReactNode } from 'react';

/**
 * The fields of one check. The Enter key presses this check's own button; without script it presses the form's first one, which
 * enters everything that is filled in.
 */
export function EnterHere({ label, children }: { label: string; children: ReactNode }) {
  const enter = (event: KeyboardEvent<HTMLFieldSetElement>) => {
    if (event.key !== 'Enter' || !(event.target instanceof HTMLInputElement)) return;
    event.preventDefault();
    event.currentTarget.querySelector<HTMLButtonElement>('button[name="check"]')?.click();
  };
  return (
    <fieldset className="form" onKeyDown={enter}>
      <legend className="sr-only">{label}</legend>
      {children}
    </fieldset>
  );
}
