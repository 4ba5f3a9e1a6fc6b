/** What a workshop is called until its owner has said. */
export const PLACEHOLDER_NAME = 'Your workshop';

export type ToldSettings = {
  name: string;
  addressLines: readonly string[];
  town: string;
  email: string;
  territory: string;
};

/** What cannot be done without a setting: taking a unit on, or issuing its certificate. */
export type Stopped = 'booking' | 'certificate';

const DETAILS = '/workshop/settings/details';

export type MissingSetting = {
  key: keyof ToldSettings;
  /** what is missing, as part of a sentence */
  words: string;
  /** why it matters, as a sentence */
  why: string;
  /** the page on which it is filled in */
  href: typeof DETAILS;
  stops: readonly Stopped[];
};

/**
 * Every setting a workshop has to have. A certificate names who stands behind it and where it holds
 * (Directive (EU) 2019/771 Art. 17(2)(b), (e)); whoever books posts a unit to the address.
 */
const NEEDED: readonly (MissingSetting & { isTold: (told: ToldSettings) => boolean })[] = [
  {
    key: 'name',
    words: 'the workshop’s name',
    why: 'Pages, mails and papers would be signed by nobody.',
    href: DETAILS,
    stops: ['booking', 'certificate'],
    isTold: ({ name }) => isText(name) && name.trim() !== PLACEHOLDER_NAME,
  },
  {
    key: 'addressLines',
    words: 'the address for parcels',
    why: 'It stands on the packing slip, the invoice and the certificate.',
    href: DETAILS,
    stops: ['booking', 'certificate'],
    isTold: ({ addressLines }) => addressLines.some(isText),
  },
  {
    key: 'town',
    words: 'the town',
    why: 'A parcel without it does not arrive.',
    href: DETAILS,
    stops: ['booking'],
    isTold: ({ town }) => isText(town),
  },
  {
    key: 'email',
    words: 'the address for customers’ mail',
    why: 'Customers answer to it, and the certificate names it.',
    href: DETAILS,
    stops: ['booking', 'certificate'],
    isTold: ({ email }) => isText(email),
  },
  {
    key: 'territory',
    words: 'where certificates hold good',
    why: 'A certificate has to say it, and no repaired unit goes back without its certificate.',
    href: DETAILS,
    stops: ['certificate'],
    isTold: ({ territory }) => isText(territory),
  },
];

/** What of the settings is missing; with `stopped` only what stops that. */
export function missingSettings(told: ToldSettings, stopped?: Stopped): MissingSetting[] {
  return NEEDED.filter((need) => !need.isTold(told))
    .filter(({ stops }) => stopped === undefined || stops.includes(stopped))
    .map(({ isTold: _, ...missing }) => missing);
}

/** Whether customers may book: the workshop has a name and an address to post to. */
export function takesBookings(told: ToldSettings): boolean {
  return missingSettings(told, 'booking').length === 0;
}

/** 'the town', 'the workshop’s name and the town', 'the workshop’s name, the town and where certificates hold good'. */
export function missingWords(missing: readonly Pick<MissingSetting, 'words'>[]): string {
  const words = missing.map((each) => each.words);
  const last = words.pop() ?? '';
  return words.length === 0 ? last : `${words.join(', ')} and ${last}`;
}

function isText(text: string): boolean {
  return text.trim() !== '';
}
