import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { errorTitle } from '@/app/ui/forms/error-title';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { typedIn, whereItLeads } from './where-it-leads';

type Props = { searchParams: Promise<{ number?: string | string[] }> };

export async function generateMetadata({ searchParams }: Props): Promise<Metadata> {
  const { problem } = whereItLeads(typedIn((await searchParams).number));
  return { title: errorTitle('Where is my repair', problem !== null) };
}

export default async function TrackPage({ searchParams }: Props) {
  const typed = typedIn((await searchParams).number);
  const { href, problem } = whereItLeads(typed);
  if (href) redirect(href);
  return (
    <>
      <PageHead
        title="Where is my repair?"
        lead="Type the job number from your packing slip or our e-mail."
        next="you see at which stage your unit is. The link in our e-mail shows everything else."
      />
      <NumberForm
        action="/track"
        name="number"
        label="Job number"
        hint="It looks like J-4K7Q-X290. Capitals, spaces and hyphens do not matter."
        value={typed ?? ''}
        problem={problem}
        submit="Show the stage"
      />
    </>
  );
}
