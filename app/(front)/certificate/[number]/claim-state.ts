import type { Route } from 'next';
import type { FormState } from '@/app/ui/forms/form-state';

/** The answer to a claim in finished sentences, and whether the form goes on to the address. */
export type AnswerView = {
  answer: string;
  heading: string;
  sentences: string[];
  next: string | null;
  links: { href: Route; label: string }[];
  isGood: boolean;
};

export type ClaimState = FormState & {
  answer?: AnswerView | undefined;
  /** 'ask' shows the questions, 'open' the answer with what is left to give */
  phase?: 'ask' | 'open' | undefined;
  needsPhoto?: boolean | undefined;
};
