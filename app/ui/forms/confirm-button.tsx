'use client';
import { type ReactNode, useContext } from 'react';
import { FormContext, hasProblem } from './form-context';
import { SubmitButton } from './submit';

type ConfirmProps = {
  label: string;
  question: ReactNode;
  confirm: string;
  consequence?: ReactNode;
  children?: ReactNode;
  name?: string | undefined;
  value?: string | undefined;
};

/**
 * For a move that costs something or cannot be taken back: asks once, then shows the real button.
 * It opens without script, and stands open when the form comes back with a problem. Fields that belong to the move (a reason) go inside.
 * Give it a form of its own, or put it after the form's main button: the Enter key presses the first one.
 *
 * ```tsx
 * <ConfirmButton label="Decline the new price" question="Send it back unrepaired?"
 *   confirm="Yes, send it back" consequence="Return costs £9.60. You can still change your mind until it is posted." />
 * ```
 */
export function ConfirmButton(props: ConfirmProps) {
  const { label, question, confirm, consequence, children, name, value } = props;
  const { state } = useContext(FormContext);
  return (
    <details className="confirm" open={hasProblem(state)}>
      <summary className="button button-second">{label}</summary>
      <div className="confirm-ask">
        <p className="confirm-question">{question}</p>
        {children}
        <SubmitButton label={confirm} consequence={consequence} name={name} value={value} />
      </div>
    </details>
  );
}
