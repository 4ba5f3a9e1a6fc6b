'use client';
import { useActionState, useId, useRef } from 'react';
import { useAnswerFocus } from '@/app/ui/forms/answer-focus';
import { RadioGroup } from '@/app/ui/forms/choices';
import { ErrorSummary } from '@/app/ui/forms/error-summary';
import { FormContext, hasProblem } from '@/app/ui/forms/form-context';
import { SubmitBar } from '@/app/ui/forms/submit';
import { TextArea } from '@/app/ui/forms/text-area';
import { TextField } from '@/app/ui/forms/text-field';
import { Notice } from '@/app/ui/page/notice';
import { TextLink } from '@/app/ui/page/text-link';
import type { AnswerView, ClaimState } from './claim-state';
import { OpenHalf, type OpenHalfProps, OTHER_SYMPTOM } from './open-half';

type Props = OpenHalfProps & {
  action: (before: ClaimState, formData: FormData) => Promise<ClaimState>;
  symptoms: readonly string[];
  serialPlace: string;
};

/** What the second half asks for, `kept` being the photos that are here; it travels on unseen while the first is changed. */
const SECOND_HALF = [
  'battery',
  'data',
  'name',
  'email',
  'phone',
  'address1',
  'address2',
  'postcode',
  'town',
  'country',
  'kept',
] as const;

/**
 * A claim in one form of two halves: the questions, and after the answer what is left to give. The first half's values
 * travel on in hidden fields, so that the walk needs no script and nothing has to be typed twice; they are shown again
 * before the claim is opened, and can be changed (WCAG 2.2, success criterion 3.3.4).
 */
export function ClaimForm(props: Props) {
  const [state, formAction, pending] = useActionState<ClaimState, FormData>(props.action, {});
  const prefix = useId();
  const top = useRef<HTMLDivElement>(null);
  const form = useRef<HTMLFormElement>(null);
  useAnswerFocus(state, () => top.current ?? form.current);
  const isOpen = state.phase === 'open';
  const isRefused = hasProblem(state);
  return (
    <FormContext value={{ state, pending, prefix }}>
      <form ref={form} tabIndex={-1} action={formAction} noValidate className="form" aria-label="Claim">
        {isRefused ? <ErrorSummary state={state} prefix={prefix} ref={top} /> : null}
        {state.answer ? (
          // autoFocus reaches the browser as an attribute, so the answer is read first without script too.
          <div
            ref={isRefused ? undefined : top}
            tabIndex={-1}
            // biome-ignore lint/a11y/noAutofocus: an answer to a post, never the first sight of the page
            autoFocus={!isRefused}
            className="form-answer"
          >
            <Answer answer={state.answer} />
          </div>
        ) : null}
        {isOpen ? <OpenHalf {...props} state={state} /> : <AskHalf {...props} state={state} />}
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
      {answer.links.map(({ href, label }) => (
        <p key={href}>
          <TextLink href={href} file={href.startsWith('mailto:')}>
            {label}
          </TextLink>
        </p>
      ))}
    </Notice>
  );
}

function AskHalf({ symptoms, serialPlace, state }: Props & { state: ClaimState }) {
  return (
    <>
      <input type="hidden" name="phase" value="ask" />
      {SECOND_HALF.flatMap((name) =>
        [state.values?.[name] ?? []]
          .flat()
          .map((value) => <input key={`${name} ${value}`} type="hidden" name={name} value={value} />),
      )}
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
        choices={[...symptoms.map((symptom) => ({ value: symptom, label: symptom })), OTHER_SYMPTOM]}
      />
      <TextArea
        name="details"
        label="Anything else we should know"
        hint={`Needed with “${OTHER_SYMPTOM.label}”.`}
        optional
        maxLength={2000}
        rows={3}
      />
      <SubmitBar label="See where I stand" busy="Looking…" consequence="Free, and nothing is sent in yet." />
    </>
  );
}
