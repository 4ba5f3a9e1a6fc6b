'use client';
import type { ReactNode } from 'react';
import { FieldFrame } from './field-frame';
import { firstOf, useField } from './form-context';

type TextAreaProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  defaultValue?: string | undefined;
  rows?: number | undefined;
  maxLength?: number | undefined;
};

/**
 * Several lines of text.
 *
 * ```tsx
 * <TextArea name="symptoms" label="What does it do, or not do?" rows={5} maxLength={2000} />
 * ```
 */
export function TextArea(props: TextAreaProps) {
  const { name, label, hint, optional, rows = 4, maxLength } = props;
  const facts = useField(name, Boolean(hint));
  return (
    <FieldFrame facts={facts} label={label} hint={hint} optional={optional}>
      <textarea
        id={facts.id}
        name={name}
        rows={rows}
        maxLength={maxLength}
        className="field-box field-area"
        defaultValue={firstOf(facts.typed) ?? props.defaultValue ?? ''}
        aria-invalid={facts.problem ? true : undefined}
        aria-describedby={facts.describedBy}
      />
    </FieldFrame>
  );
}
