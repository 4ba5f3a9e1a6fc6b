import type { ReactNode } from 'react';
import type { Day } from '@/lib/calendar/day';
import type { FactsOf, MailTemplate } from '@/lib/mail/rules/content';

/** What a message may say beyond its own facts: read again from the records when it is drawn. */
export type Setting = {
  workshop: {
    name: string;
    addressLines: readonly string[];
    email: string;
    phone: string;
    /** ISO 3166-1 alpha-2; decides the sentence on rights by law. */
    country: string;
    /** How long an answer takes: '2 working days'. */
    answerWithin: string;
    locale: string;
    currency: string;
    paymentText: string;
    bankHolder: string;
    iban: string;
    bic: string;
    payLink: string;
  };
  /** What the message is about: a job, or a quote that was asked for and has no job yet. */
  job: {
    /** As shown: 'J-4K7Q-X29D', or 'Q-…' for a quote. */
    number: string;
    kind: 'repair' | 'claim' | 'quote';
    unit: string;
    /** Empty where a quote was asked for without one. */
    serial: string;
    /** Empty on a quote until a repair was chosen. */
    repair: string;
    /** What the customer has agreed to, minor units with tax. */
    agreed: number;
    /** What a return unrepaired costs at most. */
    returnFee?: number;
    /** The part of it that is for the inspection, and owed after a no to more. */
    inspectionFee?: number;
    /** All of it is for the inspection: the repair gets a price of its own. */
    isInspection?: boolean;
    /** The customer has not said yes to any price yet. */
    isPriceOpen?: boolean;
    customer: string;
    promisedOn: Day | null;
    /** Working days from its arrival that were stated for a booked repair; absent of a claim and of a quote. */
    stated?: { days: number; isQuoted: boolean };
    isRepaired: boolean;
    hasLithiumBattery: boolean;
  };
  /** The right to withdraw from the contract of the job; absent where there is none. */
  withdrawal?: {
    rule: 'eu' | 'uk';
    until: Day;
    isStartAsked: boolean;
    /** Where the law's texts are, for those who have no private link any more. */
    page: string;
  };
  /** The terms of the workshop as the contract of the job was made under them; absent where none are known. */
  terms?: string;
  /** The customer's private link to the job or quote, or null when every one was withdrawn. */
  link: string | null;
  /** Drawn for staff to look at: the link opens nothing from there, since what is done behind it counts as the customer's. */
  isLookedAt?: boolean;
  /** The same job or quote on the workshop's side. */
  desk: string;
};

/** One message before it is framed. `summary` is the line that mail programs show beside the subject. */
export type Letter = { subject: string; summary: string; to: 'customer' | 'workshop'; body: ReactNode };

export type Writer<T extends MailTemplate> = (facts: FactsOf<T>, setting: Setting) => Letter;
