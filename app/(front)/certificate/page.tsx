import type { Metadata, Route } from 'next';
import { redirect } from 'next/navigation';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { TextLink } from '@/app/ui/page/text-link';
import { codeIn } from '@/lib/jobs/rules/sought';
import { explainReading, readNumber } from '@/lib/numbers/job-number';
import { WHERE_NUMBERS_LEAD } from '../track/where-numbers-lead';

export const metadata: Metadata = { title: 'Certificate or claim' };

type Props = { searchParams: Promise<{ number?: string | string[] }> };

export default async function CertificatePage({ searchParams }: Props) {
  const { number } = await searchParams;
  const typed = typeof number === 'string' ? number : '';
  const problem = typed === '' ? null : leadOn(typed);
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
        hint="Top left on the certificate. It starts with W and looks like W-4K7Q-X29D."
        value={typed}
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

/** Leads on to the page of a number or code, which looks it up; or says why it leads nowhere. */
function leadOn(typed: string): string {
  const code = codeIn(typed);
  if (code !== null) redirect(`/c/${code}` as Route);
  const reading = readNumber(typed);
  if (!reading.ok) return explainReading(reading.reason);
  if (reading.kind === 'W') redirect(`/certificate/${reading.number}` as Route);
  if (reading.kind === 'J') redirect(`/track/${reading.number}` as Route);
  return WHERE_NUMBERS_LEAD[reading.kind];
}
