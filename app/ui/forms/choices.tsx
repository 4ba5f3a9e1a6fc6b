'use client';
import type { ReactNode } from 'react';
import { GroupFrame, Problem } from './field-frame';
import { useField, useTicked } from './form-context';
import type { Choice } from './select';

type GroupProps = {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  optional?: boolean | undefined;
  choices: readonly Choice[];
};

/**
 * One answer out of a few, as a ruled list of large targets.
 *
 * ```tsx
 * <RadioGroup name="battery" label="Is there a battery in it?"
 *   choices={[{ value: 'no', label: 'No' }, { value: 'yes', label: 'Yes', hint: 'We tell you how to post it safely.' }]} />
 * ```
 */
export function RadioGroup(props: GroupProps & { defaultValue?: string | undefined }) {
  const facts = useField(props.name, Boolean(props.hint));
  const ticked = useTicked(props.name);
  const chosen = ticked ? ticked[0] : props.defaultValue;
  return (
    <GroupFrame facts={facts} label={props.label} hint={props.hint} optional={props.optional}>
      <Rows
        type="radio"
        {...props}
        id={facts.id}
        chosen={chosen ? [chosen] : []}
        wrong={facts.problem !== undefined}
      />
    </GroupFrame>
  );
}

/**
 * Any number of answers out of a few. Name it in parseForm's `arrays`.
 *
 * ```tsx
 * <CheckboxGroup name="accessories" label="What are you sending along?" defaultValues={[]}
 *   choices={[{ value: 'supply', label: 'Power supply' }, { value: 'case', label: 'Case' }]} />
 * ```
 */
export function CheckboxGroup(props: GroupProps & { defaultValues?: readonly string[] }) {
  const facts = useField(props.name, Boolean(props.hint));
  const ticked = useTicked(props.name);
  return (
    <GroupFrame facts={facts} label={props.label} hint={props.hint} optional={props.optional}>
      <Rows
        type="checkbox"
        {...props}
        id={facts.id}
        chosen={ticked ?? props.defaultValues ?? []}
        wrong={facts.problem !== undefined}
      />
    </GroupFrame>
  );
}

/**
 * One box to tick; `value` is what is posted when it is ticked.
 *
 * ```tsx
 * <Checkbox name="terms" label={<>I agree to the <a href="/terms">terms</a></>} />
 * ```
 */
export function Checkbox(props: {
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  value?: string | undefined;
  defaultChecked?: boolean | undefined;
}) {
  const { name, label, hint, value = 'yes' } = props;
  const facts = useField(name, false);
  const ticked = useTicked(name);
  return (
    <div className={facts.problem ? 'field field-wrong' : 'field'}>
      <Problem facts={facts} />
      <Rows
        type="checkbox"
        name={name}
        id={facts.id}
        choices={[{ value, label, hint }]}
        chosen={ticked ?? (props.defaultChecked ? [value] : [])}
        wrong={facts.problem !== undefined}
        describedBy={facts.describedBy}
      />
    </div>
  );
}

type RowsProps = {
  type: 'radio' | 'checkbox';
  name: string;
  id: string;
  choices: readonly Choice[];
  chosen: readonly string[];
  wrong: boolean;
  describedBy?: string | undefined;
};

// The first row carries the field's own id, so that the link in the error summary lands on it.
function Rows({ type, name, id, choices, chosen, wrong, describedBy }: RowsProps) {
  return (
    <div className="choices" key={chosen.join('\n')}>
      {choices.map((choice, at) => {
        const rowId = at === 0 ? id : `${id}-${at}`;
        const hintId = `${rowId}-says`;
        const described = [choice.hint ? hintId : '', describedBy ?? ''].filter(Boolean).join(' ');
        return (
          <div className="choice" key={choice.value}>
            <input
              id={rowId}
              type={type}
              name={name}
              value={choice.value}
              className="choice-box"
              defaultChecked={chosen.includes(choice.value)}
              aria-invalid={wrong && type === 'checkbox' ? true : undefined}
              aria-describedby={described || undefined}
            />
            <label className="choice-label" htmlFor={rowId}>
              {choice.label}
            </label>
            {choice.hint ? (
              <span className="choice-hint" id={hintId}>
                {choice.hint}
              </span>
            ) : null}
          </div>
        );
      })}
    </div>
  );
}
