import { decimalText } from '@/lib/money/amount';
import type { BatteryKind } from './battery';
import { kilogramText } from './measures';
import type { PackedBattery } from './packed-battery';

export type CustomsParty = {
  name: string;
  address: readonly string[];
  country: string;
  phone: string;
  email: string;
};

export type CustomsFacts = {
  sender: CustomsParty;
  receiver: CustomsParty;
  /** 'Tideline Gull' and what kind of thing that is: 'Field recorders' */
  unit: string;
  family: string;
  serial: string;
  isRepaired: boolean;
  /** under a certificate, and so without charge */
  isClaim: boolean;
  /** the bare unit, and the packed parcel; null where nobody weighed it */
  unitGrams: number | null;
  parcelGrams: number | null;
  /** what the unit is worth; null where nobody has said it. Minor units, as the price of the repair. */
  valueMinor: number | null;
  repairMinor: number;
  currency: string;
  /** '' where the catalogue has none */
  tariffNumber: string;
  battery: { kind: BatteryKind; wattHours: number | null; packed: PackedBattery };
  /** job number as shown, and the invoice's, or null */
  reference: string;
  invoice: string | null;
};

export type CustomsField = { heading: string; entries: { name: string; value: string }[] };

export type CustomsNote = {
  fields: CustomsField[];
  /** What still has to be said before the form can be filled in, as sentences. */
  missing: string[];
};

/** Facts of the forms, from memory: Regulations to the Universal Postal Convention, forms CN 22 and CN 23. */
export const CUSTOMS_FORMS =
  'CN 22 is for small items worth up to 300 SDR; above that, and for parcels, CN 23 (Universal Postal Union, from memory). Copy what the form asks for.';
export const CUSTOMS_CAUTION =
  'This is not the form itself. The post’s or carrier’s own form, and the rules of both customs offices, come first. The sender dates and signs it.';

const NOT_SAID = 'not said yet';

/**
 * What a customs form asks about a unit that goes back to its owner abroad, in the order of the forms, and what is still
 * missing. The unit was never sold: it is declared as returned goods, and the repair's price apart from its worth.
 *
 * Example: a unit worth £240.00, repaired for £60.00, gives 'Worth of the unit' GBP 240.00 and the price apart from it GBP 60.00.
 */
export function customsNote(facts: CustomsFacts): CustomsNote {
  return { fields: fieldsOf(facts), missing: missingIn(facts) };
}

function fieldsOf(facts: CustomsFacts): CustomsField[] {
  const money = (minor: number) => `${facts.currency} ${decimalText(minor, facts.currency)}`;
  const grams = (weight: number | null) => (weight === null ? NOT_SAID : kilogramText(weight));
  const done = facts.isRepaired ? 'after repair' : 'without repair';
  return [
    { heading: 'Sender', entries: partyEntries(facts.sender) },
    { heading: 'Receiver', entries: partyEntries(facts.receiver) },
    {
      heading: 'Contents',
      entries: [
        { name: 'Description', value: `${facts.family}: ${facts.unit}, used, returned ${done}` },
        { name: 'Quantity', value: '1' },
        { name: 'Serial', value: facts.serial },
        { name: 'Net weight', value: grams(facts.unitGrams) },
        { name: 'Gross weight', value: grams(facts.parcelGrams) },
        { name: 'Tariff number (HS)', value: facts.tariffNumber === '' ? NOT_SAID : facts.tariffNumber },
        { name: 'Country of origin', value: 'unknown to the sender' },
      ],
    },
    {
      heading: 'Why it is sent',
      entries: [
        { name: 'Category', value: 'Returned goods' },
        { name: 'Where there is no such box', value: `Other: returned to its owner ${done}` },
        { name: 'Explanation', value: 'The receiver owned the unit all along. Nothing was sold.' },
      ],
    },
    {
      heading: 'Value',
      entries: [
        { name: 'Worth of the unit', value: facts.valueMinor === null ? NOT_SAID : money(facts.valueMinor) },
        { name: 'Price of the repair, apart from it', value: repairPrice(facts, money) },
      ],
    },
    { heading: 'Battery', entries: [{ name: 'Statement', value: batteryStatement(facts.battery) }] },
    {
      heading: 'References',
      entries: [
        { name: 'Sender’s reference', value: facts.reference },
        ...(facts.invoice === null ? [] : [{ name: 'Invoice', value: facts.invoice }]),
      ],
    },
  ];
}

function partyEntries({ name, address, country, phone, email }: CustomsParty): CustomsField['entries'] {
  return [
    { name: 'Name', value: name },
    { name: 'Address', value: address.filter((line) => line !== '').join(', ') },
    { name: 'Country', value: country },
    ...(phone === '' ? [] : [{ name: 'Telephone', value: phone }]),
    ...(email === '' ? [] : [{ name: 'E-mail', value: email }]),
  ];
}

function repairPrice(facts: CustomsFacts, money: (minor: number) => string): string {
  if (!facts.isRepaired) return 'none: the unit was not repaired';
  if (facts.isClaim && facts.repairMinor === 0)
    return `${money(0)}, repaired free of charge under its certificate`;
  return money(facts.repairMinor);
}

/** UN 3481 is lithium-ion in or with equipment (ADR 3.2, table A); button cells in equipment need no statement but a word. */
function batteryStatement({ kind, wattHours, packed }: CustomsFacts['battery']): string {
  if (kind === 'none' || packed === 'none') return 'No battery in the parcel';
  if (packed === 'unsound') return 'The battery is not sound: this parcel may not be sent';
  const place = packed === 'fitted' ? 'fitted in the unit' : 'beside the unit';
  if (kind === 'button-cell') return `Button cell ${place}`;
  const size = wattHours === null ? '' : ` of ${Number(wattHours.toFixed(2))} Wh`;
  return `Lithium-ion battery${size} ${place}, UN 3481`;
}

function missingIn(facts: CustomsFacts): string[] {
  return [
    ...(facts.valueMinor === null ? ['What the unit is worth: say it where the unit is sent back.'] : []),
    ...(facts.parcelGrams === null
      ? ['The weight of the packed parcel: say it where the unit is sent back.']
      : []),
    ...(facts.unitGrams === null
      ? ['The weight of the unit: it is kept with the model in the catalogue.']
      : []),
    ...(facts.tariffNumber === '' ? ['The tariff number: it is kept with the model in the catalogue.'] : []),
    ...(facts.battery.packed === 'unsound' && facts.battery.kind !== 'none'
      ? ['The battery: a parcel with a battery that is not sound may not be sent.']
      : []),
  ];
}
