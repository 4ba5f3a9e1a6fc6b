'use client';
import { useContext } from 'react';
import { FormContext, firstOf } from '@/app/ui/forms/form-context';
import { WrittenText } from '@/app/ui/words/written-text';

/** The typed terms and privacy notice as customers would read them, after "Preview" was pressed. */
export function TextsPreview() {
  const { state } = useContext(FormContext);
  if (firstOf(state.values?.['intent']) !== 'preview') return null;
  const typed = (name: string) => firstOf(state.values?.[name]) ?? '';
  return (
    <section aria-labelledby="preview" className="border border-edge bg-sheet p-6">
      <h2 id="preview" className="mb-6">
        Preview: terms
      </h2>
      <WrittenText text={typed('termsText') || 'Empty.'} headingLevel={3} />
      <h2 className="mt-12 mb-6">Preview: privacy</h2>
      <WrittenText text={typed('privacyText') || 'Empty.'} headingLevel={3} />
    </section>
  );
}
