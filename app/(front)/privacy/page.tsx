import type { Metadata } from 'next';
import { readWorkshop } from '@/app/read-workshop';
import { PageHead } from '@/app/ui/page/page-head';
import { WrittenText } from '@/app/ui/words/written-text';
import { keepingWords } from '@/lib/keeping/rules/keeping-words';

export const metadata: Metadata = { title: 'Privacy' };

export default async function PrivacyPage() {
  const { name, privacyText, email, keepMonths } = await readWorkshop();
  return (
    <>
      <PageHead title="Privacy" lead={`What ${name} keeps about you, why, and for how long.`} />
      {privacyText ? (
        <WrittenText text={privacyText} />
      ) : (
        <p className="prose">
          {name} has not published its privacy notice here yet.{' '}
          {email ? (
            <>
              Ask for it: <a href={`mailto:${email}`}>{email}</a>.
            </>
          ) : null}
        </p>
      )}
      <section aria-labelledby="months">
        <h2 id="months">In months</h2>
        {keepingWords(keepMonths).map((sentence) => (
          <p key={sentence} className="prose">
            {sentence}
          </p>
        ))}
      </section>
    </>
  );
}
