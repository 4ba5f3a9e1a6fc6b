import type { Metadata } from 'next';
import { showTyped } from '@/lib/numbers/job-number';

type Numbered = { params: Promise<{ number: string }> };

/** The title of a page about one job or quote carries its number, so that two tabs at a bench are told apart. */
export function numberedTitle(what: string): (props: Numbered) => Promise<Metadata> {
  return async ({ params }) => ({ title: `${what}, ${showTyped((await params).number)}` });
}
