'use client';
import { useContext } from 'react';
import { Checkbox } from '@/app/ui/forms/choices';
import { FormContext } from '@/app/ui/forms/form-context';

/** The question before a ruling that is told at once: there once the answer to the form asks it. */
export function ToldAtOnce() {
  const { state } = useContext(FormContext);
  if (!state.errors?.['mayTell'] && state.values?.['mayTell'] === undefined) return null;
  return <Checkbox name="mayTell" label="It is covered: tell the customer now" />;
}
