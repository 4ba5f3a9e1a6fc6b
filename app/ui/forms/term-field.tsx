'use client';
import { TERM_UNIT_KEYS, TERM_UNITS, termParts } from '@/lib/catalogue/rules/term-parts';
import { FieldFrame } from './field-frame';
import { firstOf, useField } from './form-context';

type TermFieldProps = {
  name: string;
  label: string;
  hint: string;
  /** ISO 8601, null for none */
  defaultValue: string | null;
};

/**
 * A length of time as a number and its unit, empty for none. It is sent as two fields, `name` and `nameUnit`; read both with
 * readTerm of lib/catalogue/rules/term-parts.ts.
 *
 * ```tsx
 * <TermField name="workTerm" label="Term on the work" hint="Empty when not covered." defaultValue="P12M" />
 * ```
 */
export function TermField({ name, label, hint, defaultValue }: TermFieldProps) {
  const facts = useField(name, true);
  const unit = useField(`${name}Unit`, false);
  const stored = termParts(defaultValue);
  return (
    <FieldFrame facts={facts} label={label} hint={hint} optional>
      <span className="field-line field-half">
        <input
          id={facts.id}
          name={name}
          className="field-box"
          defaultValue={firstOf(facts.typed) ?? stored.count}
          inputMode="numeric"
          autoComplete="off"
          maxLength={20}
          aria-invalid={facts.problem ? true : undefined}
          aria-describedby={facts.describedBy}
        />
        <select
          id={unit.id}
          name={`${name}Unit`}
          className="field-box"
          defaultValue={firstOf(unit.typed) ?? stored.unit}
          aria-label={`${label}, counted in`}
        >
          {TERM_UNIT_KEYS.map((key) => (
            <option key={key} value={key}>
              {TERM_UNITS[key]}
            </option>
          ))}
        </select>
      </span>
    </FieldFrame>
  );
}
