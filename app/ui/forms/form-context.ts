'use client';
import { createContext, useContext } from 'react';
import type { FormState } from './form-state';

type FormFacts = { state: FormState; pending: boolean; prefix: string };

/** What ActionForm tells the fields inside it; outside a form, fields stand alone. */
export const FormContext = createContext<FormFacts>({
  state: {},
  pending: false,
  prefix: 'field',
});

export type FieldFacts = {
  id: string;
  typed: string | string[] | undefined;
  problem: string | undefined;
  describedBy: string | undefined;
  hintId: string;
  problemId: string;
  answer: FormState;
};

/** Ids, what was typed and the present problem of the field called `name`. */
export function useField(name: string, hint: boolean): FieldFacts {
  const { state, prefix } = useContext(FormContext);
  const id = fieldId(prefix, name);
  const hintId = `${id}-hint`;
  const problemId = `${id}-problem`;
  const problem = state.errors?.[name]?.[0];
  const describedBy = [hint ? hintId : '', problem ? problemId : ''].filter(Boolean).join(' ');
  return {
    id,
    typed: state.values?.[name],
    problem,
    describedBy: describedBy || undefined,
    hintId,
    problemId,
    answer: state,
  };
}

/** One id for a field, used by the field itself and by the link in the error summary. */
export function fieldId(prefix: string, name: string): string {
  return `${prefix}-${name}`;
}

export function firstOf(typed: string | string[] | undefined): string | undefined {
  return Array.isArray(typed) ? typed[0] : typed;
}

/** Ticked values after a post; an untouched form gives undefined, a form posted with nothing ticked gives []. */
export function useTicked(name: string): readonly string[] | undefined {
  const { state } = useContext(FormContext);
  if (!state.values) return undefined;
  const typed = state.values[name] ?? [];
  return Array.isArray(typed) ? typed : [typed];
}

/** True for the answer to a form that was refused, at a field or as a whole. */
export function hasProblem(state: FormState): boolean {
  const wrong = Object.keys(state.errors ?? {}).length;
  return wrong > 0 || Boolean(state.message) || Boolean(state.conflict);
}
