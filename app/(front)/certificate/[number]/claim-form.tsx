'use client';
import { useActionState, useEffect, useId, useRef } from 'react';
import { AddressFields } from '@/app/ui/forms/address-fields';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ErrorSummary } from '@/app/ui/forms/error-summary';
import { FileField } from '@/app/ui/forms/file-field';
import { FormContext } from '@/app/ui/forms/form-context';
import type { Choice } from '@/app/ui/forms/select';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { AnswerView, ClaimState } from './claim-state';

type Props = {
  action: (before: ClaimState, formData: FormData) => Promise<ClaimState>;
  symptoms: readonly string[];
  countries: readonly { value: string; label: string }[];
  batteries: readonly Choice[];
  batteryQuestion: { label: string; hint: string };
  serialPlace: string;
};

const OTHER: Choice = { value: 'other', label: 'Something else', hint: 'Tell us below what it does.' };

/**
 * A claim in one form of two halves: the questions, and after the answer what is left to give. The first half's values
 * travel on in hidden fields, so that the walk needs no script and nothing has to be typed twice.
 */
export function ClaimForm(props: Props) {
  const [state, formAction, pending] = useActionState<ClaimState, FormData>(props.action, {});
  const prefix = useId();
  const top = useRef<HTMLDivElement>(null);
  const shown = useRef(state);
  useEffect(() => {
    if (shown.current === state) return;
    shown.current = state;
    top.current?.focus();
  }, [state]);
  const isOpen = state.phase === 'open';
  const hasProblem = Object.keys(state.errors ?? {}).length > 0 || Boolean(state.message);
  return (
    <FormContext value={{ state, pending, prefix }}>
      <form action={formAction} noValidate className="form" aria-label="Claim">
        {hasProblem ? <ErrorSummary state={state} prefix={prefix} ref={top} /> : null}
        {state.answer ? (
          // autoFocus reaches the browser as an attribute, so the answer is read first without script too.
          <div
            ref={hasProblem ? undefined : top}
            tabIndex={-1}
            // biome-ignore lint/a11y/noAutofocus: an answer to a post, never the first sight of the page
            autoFocus={!hasProblem}
            className="form-answer"
          >
            <Answer answer={state.answer} />
          </div>
        ) : null}
        {isOpen ? <OpenHalf {...props} state={state} /> : <AskHalf {...props} />}
      </form>
    </FormContext>
  );
}

function Answer({ answer }: { answer: AnswerView }) {
  return (
    <Notice kind={answer.isGood ? 'good' : 'note'} heading={answer.heading} role="status">
      <ul className="plain-list">
        {answer.sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {answer.next ? (
        <p>
          <strong>Next: </strong>
          {answer.next}
        </p>
      ) : null}
      {answer.link ? (
        <p>
          <TextLink href={answer.link.href}>{answer.link.label}</TextLink>
        </p>
      ) : null}
    </Notice>
  );
}

function AskHalf({ symptoms, serialPlace }: Props) {
  return (
    <>
      <input type="hidden" name="phase" value="ask" />
      <TextField
        name="serial"
        label="Serial number, as it stands on the unit"
        hint={serialPlace === '' ? 'Read it from the unit, not from the paper.' : serialPlace}
        mono
        autoComplete="off"
        maxLength={60}
        scan
      />
      <RadioGroup
        name="symptom"
        label="What does it do?"
        choices={[...symptoms.map((symptom) => ({ value: symptom, label: symptom })), OTHER]}
      />
      <TextArea name="details" label="Anything else we should know" optional maxLength={2000} rows={3} />
      <SubmitBar label="See where I stand" busy="Looking…" consequence="Free, and nothing is sent in yet." />
    </>
  );
}

function OpenHalf({ state, batteries, batteryQuestion, countries }: Props & { state: ClaimState }) {
  const kept = (name: string) => {
    const value = state.values?.[name];
    return Array.isArray(value) ? (value[0] ?? '') : (value ?? '');
  };
  return (
    <>
      <input type="hidden" name="phase" value="open" />
      <input type="hidden" name="serial" value={kept('serial')} />
      <input type="hidden" name="symptom" value={kept('symptom')} />
      <input type="hidden" name="details" value={kept('details')} />
      <FileField
        name="photos"
        label={state.needsPhoto ? 'A photo of the serial on the unit' : 'Photos of what you see'}
        optional={!state.needsPhoto}
        most={6}
        maxMegabytes={15}
      />
      {batteries.length > 0 ? (
        <RadioGroup
          name="battery"
          label={batteryQuestion.label}
          hint={batteryQuestion.hint}
          choices={batteries}
        />
      ) : null}
      <h3>Where do we send it back?</h3>
      <AddressFields countries={countries} />
      <SubmitBar
        label="Open my claim"
        busy="Opening…"
        consequence="You get a packing slip and a private link. The inspection, the covered repair and the way back are free: you pay 0.00."
      />
    </>
  );
}
