import { addDays, compareDays, type Day, daysBetween } from '@/lib/calendar/day';
import { formatDay } from '@/lib/calendar/format';
import { workingDaysWords } from '@/lib/calendar/working';
import { formatMoney } from '@/lib/money/amount';
import { LEAST_VALID_DAYS } from './held-price';

/**
 * The European Repair Information Form: Directive (EU) 2024/1799, Annex I. Its eleven fields stand here in the order of
 * the Annex; that the repairer comes first and the good second was read there, the rest of the order and the wording of
 * the fields are from memory and have to be compared with the Official Journal before anyone relies on them.
 */
export const REPAIR_FORM_FIELDS = [
  'repairer',
  'good',
  'defect',
  'repair',
  'price',
  'time',
  'replacement',
  'handover',
  'ancillary',
  'validity',
  'additional',
] as const;
export type RepairFormKey = (typeof REPAIR_FORM_FIELDS)[number];

export const REPAIR_FORM_TITLE = 'European Repair Information Form';
export const REPAIR_FORM_LAW = 'Directive (EU) 2024/1799, Annex I';

/** The last day on which a form provided on a day still binds: provided 1 December 2026, the 31st. */
export function lastHeldDay(providedOn: Day): Day {
  return addDays(providedOn, LEAST_VALID_DAYS);
}

export type RepairFormFacts = {
  locale: string;
  repairer: {
    name: string;
    address: readonly string[];
    phone: string;
    email: string;
    /** another way to write to the workshop, such as the address of its pages */
    online: string;
  };
  good: { device: string; serial: string };
  defect: string;
  proposal: string;
  /** with tax, minor units; `taxName` is null where there is no tax in it */
  price: { gross: number; currency: string; taxName: string | null; isInspectionOnly: boolean };
  /** from the unit's arrival; null where it is not told */
  workingDays: number | null;
  /** what is said about a unit to use meanwhile; empty where none is offered */
  replacementText: string;
  /** services beside the repair, each with what it costs with tax, in minor units */
  ancillary: readonly { description: string; gross: number }[];
  /** minor units with tax, 0 for none */
  inspectionFee: { amount: number; isTakenOff: boolean };
  providedOn: Day;
  validUntil: Day;
  note: string;
};

/** One entry of a field: what it is, where the field has several, and what is filled in. */
export type RepairFormEntry = { name: string | null; text: string };
export type RepairFormField = {
  key: RepairFormKey;
  /** place in the form, 1 to 11 */
  place: number;
  heading: string;
  entries: RepairFormEntry[];
};

const HEADINGS: Record<RepairFormKey, string> = {
  repairer: 'Repairer',
  good: 'Good to be repaired',
  defect: 'Description of the defect',
  repair: 'Type of repair suggested',
  price: 'Price, or how it is calculated and the maximum price',
  time: 'Time needed to complete the repair',
  replacement: 'Temporary replacement goods',
  handover: 'Place where you hand over the good',
  ancillary: 'Ancillary services',
  validity: 'Period of validity',
  additional: 'Additional information',
};

/**
 * Fills in the form from a quote: amounts in minor units with tax, days as calendar days of the workshop. Every field
 * says something, "none" where there is nothing to say. Refuses a quote that does not hold for 30 calendar days.
 *
 * Example: provided 1 December 2026 and valid until the 31st, field 10 reads "Until Thursday 31 December 2026: …".
 */
export function repairForm(facts: RepairFormFacts): RepairFormField[] {
  if (compareDays(facts.validUntil, lastHeldDay(facts.providedOn)) < 0)
    throw new RangeError(
      `A repair form holds for ${LEAST_VALID_DAYS} days at least, not until ${facts.validUntil}`,
    );
  return REPAIR_FORM_FIELDS.map((key, index) => ({
    key,
    place: index + 1,
    heading: HEADINGS[key],
    entries: FILL[key](facts),
  }));
}

const FILL: Record<RepairFormKey, (facts: RepairFormFacts) => RepairFormEntry[]> = {
  repairer: ({ repairer }) =>
    named([
      ['Identity', repairer.name],
      ['Address', repairer.address.join(', ')],
      ['Telephone', repairer.phone],
      ['E-mail', repairer.email],
      ['Other means of online communication', repairer.online],
    ]),
  good: ({ good }) =>
    named([
      ['Device', good.device],
      ['Serial number', good.serial],
    ]),
  defect: ({ defect }) => [plain(defect)],
  repair: ({ proposal }) => [plain(proposal)],
  price: priceEntries,
  time: ({ workingDays }) => [plain(timeText(workingDays))],
  replacement: ({ replacementText }) => [plain(replacementText || 'None. No cost.')],
  handover: ({ repairer }) => [
    plain(`By post to ${[repairer.name, ...repairer.address].join(', ')}. You pay the postage to us.`),
  ],
  ancillary: ancillaryEntries,
  validity: ({ providedOn, validUntil, locale }) => [
    plain(
      `Until ${formatDay(validUntil, locale, 'weekday')}: ${daysBetween(providedOn, validUntil)} calendar days from ${formatDay(providedOn, locale, 'weekday')}. We do not change these conditions before it has passed.`,
    ),
  ],
  additional: additionalEntries,
};

function plain(text: string): RepairFormEntry {
  return { name: null, text: text || 'None.' };
}

function named(pairs: readonly (readonly [string, string])[]): RepairFormEntry[] {
  return pairs.map(([name, text]) => ({ name, text: text || 'none' }));
}

function priceEntries({ price, locale }: RepairFormFacts): RepairFormEntry[] {
  const money = formatMoney(price.gross, price.currency, locale);
  const withTax = price.taxName === null ? money : `${money} with ${price.taxName}`;
  if (!price.isInspectionOnly) {
    return [
      plain(`${withTax} (${price.currency}).`),
      plain('It is also the maximum price: we charge more only when you have agreed to a new one.'),
    ];
  }
  return named([
    [
      'Method of calculation',
      'The price cannot be worked out before the unit is inspected. After the inspection we offer a price by its labour, parts and postage, and you say yes or no to it.',
    ],
    ['Maximum price', `${withTax} (${price.currency}), unless you have agreed to the price offered then.`],
  ]);
}

function timeText(workingDays: number | null): string {
  if (workingDays === null) return 'We tell you when the unit has arrived.';
  const days = workingDaysWords(workingDays);
  return `${days} from the day the unit arrives at the workshop.`;
}

function ancillaryEntries({ ancillary, price, locale }: RepairFormFacts): RepairFormEntry[] {
  if (ancillary.length === 0) return [plain('None.')];
  return ancillary.map(({ description, gross }) => ({
    name: description,
    text: `${formatMoney(gross, price.currency, locale)}, which is in the price`,
  }));
}

function additionalEntries(facts: RepairFormFacts): RepairFormEntry[] {
  const { amount, isTakenOff } = facts.inspectionFee;
  const fee = formatMoney(amount, facts.price.currency, facts.locale);
  const inspection = `Finding a fault that is not named here costs ${fee}, and only when you have said yes to it before.${isTakenOff ? ' It is taken off the price when the repair goes ahead.' : ''}`;
  return [
    ...(facts.note ? [plain(facts.note)] : []),
    plain('This form costs nothing.'),
    ...(amount > 0 ? [plain(inspection)] : []),
  ];
}
