'use client';
import { useContext } from 'react';
import { ConfirmButton } from '@/app/ui/forms/confirm-button';
import { FormContext, firstOf } from '@/app/ui/forms/form-context';

/** The letter as posted for a look, and only below it the button that sends it. */
export function LetterPreview(props: {
  letters: number;
  intro: string;
  question: string;
  consequence: string;
}) {
  const { letters, intro, question, consequence } = props;
  const { state } = useContext(FormContext);
  const text = firstOf(state.values?.['text']);
  if (text === undefined || state.errors !== undefined) return null;
  return (
    <section aria-label="The letter" className="grid gap-4">
      <div className="max-w-text border border-edge bg-sheet p-4">
        <p>{intro}</p>
        <p className="written mt-3">{text}</p>
        <input type="hidden" name="seen" value={text} />
      </div>
      <ConfirmButton
        label={letters === 1 ? 'Send one letter' : `Send ${letters} letters`}
        question={question}
        confirm="Yes, send it"
        consequence={consequence}
        name="step"
        value="send"
      />
    </section>
  );
}
