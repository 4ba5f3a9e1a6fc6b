'use client';
import type { Ref } from 'react';
import { Notice } from '../page/notice';
import { fieldId } from './form-context';
import type { FormState } from './form-state';

type SummaryProps = {
  state: FormState;
  prefix: string;
  ref?: Ref<HTMLDivElement>;
};

/** What is wrong with the posted form, in the words used at the fields, each linked to its field. */
export function ErrorSummary({ state, prefix, ref }: SummaryProps) {
  const wrong = Object.entries(state.errors ?? {});
  return (
    // autoFocus reaches the browser as an attribute, so the summary is read first without script too.
    <div
      ref={ref}
      tabIndex={-1}
      // biome-ignore lint/a11y/noAutofocus: an answer to a post, never the first sight of the page
      autoFocus
      className="form-answer"
      data-answer="problem"
    >
      <Notice
        kind={state.conflict ? 'warn' : 'stop'}
        heading={state.conflict ? 'This changed while you had it open' : 'There is a problem'}
      >
        {state.message ? <p>{state.message}</p> : null}
        {state.first ? (
          <p>
            <a href={state.first.href} target="_blank" rel="noopener">
              {state.first.label}
            </a>
          </p>
        ) : null}
        {state.conflict ? <ConflictPart conflict={state.conflict} /> : null}
        {wrong.length > 0 ? (
          <ul className="summary-list">
            {wrong.map(([name, sentences]) => (
              <li key={name}>
                <a href={`#${fieldId(prefix, name)}`}>{sentences[0]}</a>
              </li>
            ))}
          </ul>
        ) : null}
      </Notice>
    </div>
  );
}

function ConflictPart({ conflict }: { conflict: NonNullable<FormState['conflict']> }) {
  return (
    <>
      <p>{conflict.message}</p>
      {conflict.changes.length > 0 ? (
        <ul className="summary-list">
          {conflict.changes.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
      ) : null}
      {conflict.href ? (
        <p>
          <a href={conflict.href}>Load it as it is now</a>
        </p>
      ) : null}
    </>
  );
}
