import type { Route } from 'next';
import { routeTo } from '@/app/ui/page/route-to';
import { codeIn } from '@/lib/jobs/rules/sought';
import { explainReading, type NumberKind, readNumber } from '@/lib/numbers/job-number';

/** What is said of a number that opens nothing by itself: what it is of, and where its private link is. */
const OPENS_NOTHING: Record<Extract<NumberKind, 'Q' | 'C'>, string> = {
  Q: 'This is the number of a quote. Open it by the private link in our e-mail; it gets a job number when you book.',
  C: 'This is the number of a claim. Open it by the private link in our e-mail, or type the number of its job, which starts with J and stands on the packing slip.',
};

export type Leads = { href: Route | null; problem: string | null };

/**
 * Where a typed number or a certificate's code leads a customer: to the page that looks it up, or nowhere, and why.
 * An address without a number leads nowhere and has no problem; a form sent with an empty field is told so.
 *
 * whereItLeads('j-4k7q x290') -> { href: '/track/J4K7QX290', problem: null }
 */
export function whereItLeads(typed: string | undefined, example?: string): Leads {
  if (typed === undefined) return { href: null, problem: null };
  const code = codeIn(typed);
  if (code !== null) return { href: routeTo(`/c/${code}`), problem: null };
  const reading = readNumber(typed);
  if (!reading.ok) return { href: null, problem: explainReading(reading.reason, example) };
  if (reading.kind === 'W') return { href: routeTo(`/certificate/${reading.number}`), problem: null };
  if (reading.kind === 'J') return { href: routeTo(`/track/${reading.number}`), problem: null };
  return { href: null, problem: OPENS_NOTHING[reading.kind] };
}

/** The one text typed into a field that the address carries; undefined where it is not there, or there twice. */
export function typedIn(text: string | string[] | undefined): string | undefined {
  return typeof text === 'string' ? text : undefined;
}
