import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { errorTitle } from '@/app/ui/forms/error-title';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { typedIn, whereItLeads } from '../track/where-it-leads';

const EXAMPLE = 'W-4K7Q-X29D';

type Props = { searchParams: Promise<{ number?: string | string[] }> };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { problem } = whereItLeads(typedIn((await searchParams).number), EXAMPLE);
  return { title: errorTitle('Certificate or claim', problem !== null) };
}

export default async function CertificatePage({ searchParams }: Props) {
  const typed = typedIn((await searchParams).number);
  const { href, problem } = whereItLeads(typed, EXAMPLE);
  if (href) redirect(href);
  return (
    <>
      <PageHead
        title="Certificate or claim"
        lead="Has your unit failed again? Scan the code on your certificate with your phone, or type its number here."
        next="you see what is covered and until when, and can open a claim. Opening one is free and takes two minutes."
      />
      <NumberForm
        action="/certificate"
        name="number"
        label="Certificate number"
        hint={`Top left on the certificate. It starts with W and looks like ${EXAMPLE}.`}
        value={typed ?? ''}
        problem={problem}
        submit="Show the cover"
        scan
      />
      <p>
        <TextLink href="/certificate/lost">Lost your certificate? We send it to you again.</TextLink>
      </p>
    </>
  );
}
