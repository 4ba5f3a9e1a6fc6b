import type { Day } from '@/lib/calendar/day';
import type { CoverCount } from './cover';
import type { CoverLine, PolicyTerms } from './terms';

export const SECTION_KEYS = [
  'guarantor',
  'unit',
  'cover',
  'counting',
  'exclusions',
  'what-we-do',
  'how-to-claim',
  'who',
  'territory',
  'disagreement',
  'limits',
  'legal-rights',
] as const;
export type SectionKey = (typeof SECTION_KEYS)[number];

/** One headed part of the certificate; the same data is drawn as PDF and shown as a page. */
export type Section = {
  key: SectionKey;
  heading: string;
  paragraphs: string[];
  /** Shown as a list after the paragraphs; numbered when the order matters. */
  items?: { numbered: boolean; texts: string[] };
};

export type CertificateFacts = {
  number: string;
  revision: number;
  issuedOn: Day;
  guarantor: { name: string; addressLines: string[]; email: string; phone: string | null };
  unit: { model: string; serial: string };
  lines: { line: CoverLine; count: CoverCount }[];
  terms: PolicyTerms;
  /** Where the promise holds, as the workshop set it: 'the United Kingdom', 'every country we post to'. */
  territory: string;
  /** ISO 3166-1 alpha-2 of the workshop. */
  country: string;
  /** For instance 'London time'. */
  zoneLabel: string;
  locale: string;
  /** Address of the page where a claim is opened, without scheme. */
  claimPage: string;
  /** Finished text: 'free' or an amount. */
  postageToUs: string;
  postageBack: string;
  /** For instance '2 working days'. */
  answerWithin: string;
};
