'use client';
import type { ReactNode } from 'react';
import { FieldFrame } from './field-frame';
import { firstOf, useField } from './form-context';

export type Choice = {
  value: string;
  label: ReactNode;
  hint?: ReactNode;
};

type SelectProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  choices: readonly {
    value: string;
    label: string;
    group?: string | undefined;
  }[];
  empty?: string | undefined;
  defaultValue?: string | undefined;
  autoComplete?: string | undefined;
  width?: 'full' | 'half' | undefined;
};

/**
 * One choice out of many; for up to six choices prefer RadioGroup. `empty` is the first line with no value.
 *
 * ```tsx
 * <Select name="carrier" label="Carrier" empty="Choose a carrier"
 *   choices={[{ value: 'post', label: 'Sandmouth Post' }, { value: 'van', label: 'Harbour Van' }]} />
 * ```
 */
export function Select(props: SelectProps) {
  const { name, label, hint, optional, choices, empty, width = 'full' } = props;
  const facts = useField(name, Boolean(hint));
  const value = firstOf(facts.typed) ?? props.defaultValue ?? '';
  const groups = [...new Set(choices.map((choice) => choice.group))];
  return (
    <FieldFrame facts={facts} label={label} hint={hint} optional={optional}>
      <span className={`field-line field-${width}`}>
        <select
          // React 19 resets a form after its action, and a select only takes its default again when it is made anew.
          key={value}
          id={facts.id}
          name={name}
          className="field-box field-select"
          defaultValue={value}
          autoComplete={props.autoComplete}
          aria-invalid={facts.problem ? true : undefined}
          aria-describedby={facts.describedBy}
        >
          {empty === undefined ? null : <option value="">{empty}</option>}
          {groups.map((group) => {
            const options = choices
              .filter((choice) => choice.group === group)
              .map((choice) => (
                <option key={choice.value} value={choice.value}>
                  {choice.label}
                </option>
              ));
            return group ? (
              <optgroup key={group} label={group}>
                {options}
              </optgroup>
            ) : (
              options
            );
          })}
        </select>
      </span>
    </FieldFrame>
  );
}
