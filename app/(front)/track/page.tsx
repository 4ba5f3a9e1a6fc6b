import type { Metadata, Route } from 'next';
import { redirect } from 'next/navigation';
import { NumberForm } from '@/app/ui/page/number-form';
import { PageHead } from '@/app/ui/page/page-head';
import { explainReading, readNumber } from '@/lib/numbers/job-number';
import { WHERE_NUMBERS_LEAD } from './where-numbers-lead';

export const metadata: Metadata = { title: 'Where is my repair' };

type Props = { searchParams: Promise<{ number?: string | string[] }> };

export default async function TrackPage({ searchParams }: Props) {
  const { number } = await searchParams;
  const typed = typeof number === 'string' ? number : '';
  const problem = typed === '' ? null : leadOn(typed);
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
        value={typed}
        problem={problem}
        submit="Show the stage"
      />
    </>
  );
}

/** Leads on to the page of a number, which looks it up; or says why it leads nowhere. */
function leadOn(typed: string): string {
  const reading = readNumber(typed);
  if (!reading.ok) return explainReading(reading.reason);
  if (reading.kind === 'J') redirect(`/track/${reading.number}` as Route);
  if (reading.kind === 'W') redirect(`/certificate/${reading.number}` as Route);
  return WHERE_NUMBERS_LEAD[reading.kind];
}
