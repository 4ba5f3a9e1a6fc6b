'use client';
import type { HTMLInputAutoCompleteAttribute, ReactNode } from 'react';
import { FieldFrame } from './field-frame';
import { firstOf, useField } from './form-context';
import { ScanButton } from './scan-button';

export type TextFieldProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  defaultValue?: string | number | undefined;
  type?: 'text' | 'email' | 'tel' | 'password' | 'date' | 'url' | 'search' | undefined;
  inputMode?: 'text' | 'numeric' | 'decimal' | 'email' | 'tel' | 'url' | undefined;
  autoComplete?: HTMLInputAutoCompleteAttribute | undefined;
  width?: 'full' | 'half' | 'short' | undefined;
  mono?: boolean | undefined;
  unit?: ReactNode;
  before?: ReactNode;
  maxLength?: number | undefined;
  min?: string | undefined;
  max?: string | undefined;
  list?: readonly string[] | undefined;
  readOnly?: boolean | undefined;
  autoFocus?: boolean | undefined;
  /** offers the device's camera to read the text from a code */
  scan?: boolean | undefined;
};

/**
 * One line of text. `mono` for numbers and serials, `unit` after the box ("Ω"), `before` in front of it ("£").
 *
 * ```tsx
 * <TextField name="serial" label="Serial number" mono autoComplete="off" hint="On the plate underneath." />
 * <TextField name="reading" label="Contact resistance" inputMode="decimal" unit="Ω" width="short" />
 * <TextField name="email" label="E-mail" type="email" autoComplete="email" />
 * ```
 */
export function TextField(props: TextFieldProps) {
  const { name, label, hint, optional, type = 'text', width = 'full' } = props;
  const facts = useField(name, Boolean(hint));
  const listId = `${facts.id}-list`;
  const typed = type === 'password' ? undefined : firstOf(facts.typed);
  return (
    <FieldFrame facts={facts} label={label} hint={hint} optional={optional}>
      <span className={`field-line field-${width}`}>
        {props.before ? <span className="field-side">{props.before}</span> : null}
        <input
          id={facts.id}
          name={name}
          type={type}
          className={props.mono ? 'field-box field-mono' : 'field-box'}
          defaultValue={typed ?? props.defaultValue ?? ''}
          inputMode={props.inputMode}
          autoComplete={props.autoComplete}
          maxLength={props.maxLength}
          min={props.min}
          max={props.max}
          readOnly={props.readOnly}
          // biome-ignore lint/a11y/noAutofocus: only for a scanner field that is the page's one purpose
          autoFocus={props.autoFocus}
          list={props.list ? listId : undefined}
          spellCheck={props.mono ? false : undefined}
          autoCapitalize={props.mono ? 'characters' : undefined}
          aria-invalid={facts.problem ? true : undefined}
          aria-describedby={facts.describedBy}
        />
        {props.unit ? <span className="field-side">{props.unit}</span> : null}
      </span>
      {props.scan ? <ScanButton fieldId={facts.id} what={label} /> : null}
      {props.list ? (
        <datalist id={listId}>
          {props.list.map((entry) => (
            <option key={entry} value={entry} />
          ))}
        </datalist>
      ) : null}
    </FieldFrame>
  );
}
