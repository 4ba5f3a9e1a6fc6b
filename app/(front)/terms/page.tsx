import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { WrittenText } from '@/app/ui/words/written-text';

export const metadata: Metadata = { title: 'Terms' };

export default async function TermsPage() {
  const { name, termsText, email } = await readWorkshop();
  return (
    <>
      <PageHead title="Terms" lead={`What ${name} and you agree on when you book a repair.`} />
      {termsText ? (
        <WrittenText text={termsText} />
      ) : (
        <p className="prose">
          {name} has not published its terms here yet.{' '}
          {email ? (
            <>
              Ask for them before you book: <a href={`mailto:${email}`}>{email}</a>.
            </>
          ) : (
            'Ask for them before you book.'
          )}
        </p>
      )}
    </>
  );
}
