'use client';
import { useEffect, useRef } from 'react';
import { errorTitle } from './error-title';
import { hasProblem } from './form-context';
import type { FormState } from './form-state';

/**
 * Tells of the answer to a form: the page's title says whether it was refused, and what `target` gives takes the focus,
 * so that it is read first. Only after an answer, never on arrival.
 */
export function useAnswerFocus(state: FormState, target: () => HTMLElement | null): void {
  const shown = useRef(state);
  useEffect(() => {
    if (shown.current === state) return;
    shown.current = state;
    document.title = errorTitle(document.title, hasProblem(state));
    target()?.focus();
  }, [state, target]);
}
