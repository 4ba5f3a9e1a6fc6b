import { missingSettings, missingWords, type ToldSettings } from './missing-settings';

export type StepSettings = ToldSettings & {
  country: string;
  holidayCountry: string;
  taxName: string;
  taxNumber: string;
  paymentText: string;
  iban: string;
  payLink: string;
};

export type StepFacts = {
  /** nothing of the settings was saved yet */
  isBlank: boolean;
  hasMailServer: boolean;
  /** the id of whoever asks, while they still go by the name the program gave the first owner */
  unnamedId: string | null;
  families: number;
  models: number;
  policies: number;
  hasListedRepair: boolean;
  /** a repair on the price list carries tax */
  hasTaxedRepair: boolean;
  hasJobs: boolean;
};

/** The pages on which the steps are done. */
type StepPage =
  | '/workshop/catalogue'
  | '/workshop/catalogue/models/new'
  | '/workshop/catalogue/policies/new'
  | '/workshop/mail'
  | `/workshop/people/${string}`
  | '/workshop/settings/days'
  | '/workshop/settings/details'
  | '/workshop/settings/money';

export type FirstStep = { key: string; label: string; why: string; href: StepPage };

/**
 * What an owner has to do before the first booking, in the order in which it is best done. Once there was a job, only what
 * customers and papers still lack is left: the rest has been looked after.
 */
export function firstSteps(settings: StepSettings, facts: StepFacts): FirstStep[] {
  const lacking = [...detailsSteps(settings), ...paySteps(settings), ...taxSteps(settings, facts)];
  if (facts.hasJobs) return lacking;
  return [...lacking, ...daysSteps(settings, facts), ...catalogueSteps(facts), ...deskSteps(facts)];
}

/** Whether the settings alone leave a step open, so that the facts have to be looked up even while there are jobs. */
export function mayLack(settings: StepSettings): boolean {
  return [...detailsSteps(settings), ...paySteps(settings)].length > 0 || settings.taxNumber.trim() === '';
}

function detailsSteps(settings: StepSettings): FirstStep[] {
  const missing = missingSettings(settings);
  const [first] = missing;
  if (!first) return [];
  return [
    {
      key: 'details',
      label: 'Details and address',
      why: `Missing: ${missingWords(missing)}. Customers cannot book, or get no certificate, without.`,
      href: first.href,
    },
  ];
}

function paySteps({ paymentText, iban, payLink }: StepSettings): FirstStep[] {
  if ([paymentText, iban, payLink].some((text) => text.trim() !== '')) return [];
  return [
    {
      key: 'money',
      label: 'Money and tax',
      why: 'Customers are told to pay and not how. Choose the currency before the first price, and give a bank account or a payment page.',
      href: '/workshop/settings/money',
    },
  ];
}

function taxSteps({ taxName, taxNumber }: StepSettings, { hasTaxedRepair }: StepFacts): FirstStep[] {
  if (!hasTaxedRepair || taxNumber.trim() !== '') return [];
  return [
    {
      key: 'tax-number',
      label: 'The tax number',
      why: `A repair on the price list carries ${taxName}, and invoices would name no tax number. If you charge no ${taxName}, give your repairs another tax.`,
      href: '/workshop/settings/money',
    },
  ];
}

function daysSteps({ country, holidayCountry }: StepSettings, { isBlank }: StepFacts): FirstStep[] {
  if (!isBlank && country === holidayCountry) return [];
  return [
    {
      key: 'days',
      label: 'Days and paper',
      why: 'Time zone, public holidays and how dates are written. Promises and cover are counted by them.',
      href: '/workshop/settings/days',
    },
  ];
}

function catalogueSteps(facts: StepFacts): FirstStep[] {
  const policy: FirstStep = {
    key: 'policy',
    label: 'A warranty policy',
    why: 'Every repair stands under one: how long it is covered, and what is not.',
    href: '/workshop/catalogue/policies/new',
  };
  const repair: FirstStep = {
    key: 'repair',
    label: 'A repair with a price',
    why:
      facts.families === 0
        ? 'First a family of devices, then a model, then what you mend on it.'
        : facts.models === 0
          ? 'Next a model, then what you mend on it.'
          : 'Open the model and add what you mend on it. It has to be listed.',
    href: facts.families > 0 && facts.models === 0 ? '/workshop/catalogue/models/new' : '/workshop/catalogue',
  };
  return [...(facts.policies === 0 ? [policy] : []), ...(facts.hasListedRepair ? [] : [repair])];
}

function deskSteps({ hasMailServer, unnamedId }: StepFacts): FirstStep[] {
  const mail: FirstStep = {
    key: 'mail',
    label: 'A mail server',
    why: 'Until one is set, mails to customers are only kept on the Mail page and reach nobody.',
    href: '/workshop/mail',
  };
  const self: FirstStep = {
    key: 'self',
    label: 'Your own name and initials',
    why: 'They stand beside what you do, on job sheets and certificates.',
    href: `/workshop/people/${unnamedId}`,
  };
  return [...(hasMailServer ? [] : [mail]), ...(unnamedId === null ? [] : [self])];
}
