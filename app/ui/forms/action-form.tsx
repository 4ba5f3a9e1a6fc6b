'use client';
import { type ReactNode, useActionState, useId, useRef } from 'react';
import { Notice } from '../page/notice';
import { useAnswerFocus } from './answer-focus';
import { ErrorSummary } from './error-summary';
import { FormContext, hasProblem } from './form-context';
import type { FormAction, FormState } from './form-state';

type ActionFormProps = {
  action: FormAction;
  children: ReactNode;
  hidden?: Record<string, string | number> | undefined;
  initial?: FormState | undefined;
  label?: string | undefined;
  /** a good answer leaves the focus where it is, for long forms that are sent part by part */
  staysPut?: boolean | undefined;
  /** folds the form away under these words; it stands open after a problem, without script too */
  summary?: string | undefined;
  /** with a summary: open from the start */
  isOpen?: boolean | undefined;
};

/**
 * A form around a server action; it works before and without script, and with script only gets smoother.
 *
 * Hand over the action itself or `action.bind(null, id)`; a closure would send nothing without script.
 * Fields inside show what was typed and their own problem; the summary above links to each of them.
 *
 * ```tsx
 * <ActionForm action={askForQuote} hidden={{ model: model.id }}>
 *   <TextField name="serial" label="Serial number" mono hint="On the plate underneath." />
 *   <TextArea name="symptoms" label="What does it do, or not do?" />
 *   <FileField name="photos" label="Photos" most={6} />
 *   <SubmitBar label="Ask for a quote" consequence="We answer within two working days. It costs nothing." />
 * </ActionForm>
 * ```
 */
export function ActionForm(props: ActionFormProps) {
  const { action, children, hidden, initial, label, staysPut, summary, isOpen } = props;
  const [state, formAction, pending] = useActionState(action, initial ?? {});
  const prefix = useId();
  const top = useRef<HTMLDivElement>(null);
  useAnswerFocus(state, () => (hasProblem(state) || !staysPut ? top.current : null));

  return (
    <FormContext value={{ state, pending, prefix }}>
      <form action={formAction} noValidate aria-label={label} className="form">
        {Object.entries(hidden ?? {}).map(([name, value]) => (
          <input key={name} type="hidden" name={name} value={value} />
        ))}
        <Fold summary={summary} isOpen={isOpen || hasProblem(state)}>
          <Answer state={state} prefix={prefix} topRef={top} />
          {children}
        </Fold>
      </form>
    </FormContext>
  );
}

type FoldProps = { summary: string | undefined; isOpen: boolean; children: ReactNode };

/** Inside the form and not around it: only the form knows that it was refused, and its problems must not be folded away. */
function Fold({ summary, isOpen, children }: FoldProps) {
  if (summary === undefined) return children;
  return (
    <details open={isOpen}>
      <summary>{summary}</summary>
      <div className="form">{children}</div>
    </details>
  );
}

type AnswerProps = {
  state: FormState;
  prefix: string;
  topRef: React.RefObject<HTMLDivElement | null>;
};

function Answer({ state, prefix, topRef }: AnswerProps) {
  if (hasProblem(state)) return <ErrorSummary state={state} prefix={prefix} ref={topRef} />;
  if (!state.done) return null;
  return (
    <div ref={topRef} tabIndex={-1} className="form-answer">
      <Notice
        kind={state.isDoneBadly ? 'warn' : 'good'}
        heading={state.isDoneBadly ? 'Entered' : undefined}
        role="status"
      >
        {state.copied ? <p className="copied">{state.copied}</p> : null}
        <p>{state.done}</p>
      </Notice>
    </div>
  );
}
