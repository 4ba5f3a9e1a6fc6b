import type { Metadata } from 'next';
import { nothingHere } from '@/app/nothing-here';
import { readWorkshop } from '@/app/read-workshop';
import { Notice } from '@/app/ui/page/notice';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { WrittenText } from '@/app/ui/words/written-text';
import { readKeptTerms } from '@/lib/workshop/kept-terms';
import { termsId } from '@/lib/workshop/terms-id';

export const metadata: Metadata = { title: 'Terms as agreed to', robots: { index: false } };

type Props = { params: Promise<{ text: string }> };

/** Terms that somebody agreed to, as they read on that day. They were published, so whoever has the address may read them. */
export default async function AgreedTermsPage({ params }: Props) {
  const { text: id } = await params;
  const kept = await readKeptTerms(id);
  if (!kept) nothingHere();
  const { name, termsText } = await readWorkshop();
  const stands = termsId(termsText) === id;
  return (
    <>
      <PageHead title="Terms as agreed to" lead={`What ${name} and you agreed on, word for word.`} />
      <Notice kind="note">
        <p>
          {stands ? (
            'These are our terms today, too.'
          ) : (
            <>
              We have other terms by now. They do not change what was agreed to under these.{' '}
              <TextLink href="/terms">The terms of today</TextLink> are for bookings made from now on.
            </>
          )}
        </p>
      </Notice>
      <WrittenText text={kept.text} />
    </>
  );
}
