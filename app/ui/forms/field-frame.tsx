'use client';
import type { ReactNode } from 'react';
import { Mark } from '../marks';
import type { FieldFacts } from './form-context';

type FrameProps = {
  facts: FieldFacts;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  children: ReactNode;
};

/** Label, hint and problem around one input. */
export function FieldFrame({ facts, label, hint, optional, children }: FrameProps) {
  return (
    <div className={facts.problem ? 'field field-wrong' : 'field'}>
      <label className="field-label" htmlFor={facts.id}>
        {label}
        {optional ? <span className="field-optional"> (optional)</span> : null}
      </label>
      <Hint facts={facts}>{hint}</Hint>
      <Problem facts={facts} />
      {children}
    </div>
  );
}

/** Legend, hint and problem around several inputs that answer one question. */
export function GroupFrame({ facts, label, hint, optional, children }: FrameProps) {
  return (
    <fieldset className={facts.problem ? 'field field-wrong' : 'field'} aria-describedby={facts.describedBy}>
      <legend className="field-label">
        {label}
        {optional ? <span className="field-optional"> (optional)</span> : null}
      </legend>
      <Hint facts={facts}>{hint}</Hint>
      <Problem facts={facts} />
      {children}
    </fieldset>
  );
}

export function Hint({ facts, children }: { facts: FieldFacts; children: ReactNode }) {
  if (!children) return null;
  return (
    <p className="field-hint" id={facts.hintId}>
      {children}
    </p>
  );
}

export function Problem({ facts }: { facts: FieldFacts }) {
  if (!facts.problem) return null;
  return (
    <p className="field-problem" id={facts.problemId}>
      <Mark shape="stop" />
      <span>{facts.problem}</span>
    </p>
  );
}
