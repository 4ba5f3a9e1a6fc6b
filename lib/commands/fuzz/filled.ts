import fc from 'fast-check';
import { hostileFile } from './files';
import type { FoundField } from './forms';
import type { Part } from './requests';

/** What somebody could type, by the name of the field; where several rooms use a name, what each of them takes. */
export const TYPED: Record<string, readonly string[]> = {
  name: ['Bryn Tolliver', 'Harbour Post', 'Socket replaced'],
  email: ['bryn@example.net', 'ada@example.org'],
  phone: ['+44 20 7946 0018', ''],
  address1: ['4 Sail Loft'],
  address2: ['Rope Walk', ''],
  postcode: ['QM3 4ZZ'],
  town: ['Sandmouth'],
  country: ['GB', 'JE'],
  serial: ['QF-104', 'MR2-00417'],
  device: ['Marram Two'],
  problem: ['The tape squeals when it is warm.'],
  details: ['Since Monday.', ''],
  number: ['WJ7K2M4PX'],
  reference: ['SM 1234 5678'],
  carrierReference: ['HP 1'],
  note: ['Read twice.', ''],
  minutes: ['20', '45'],
  workingDays: ['5'],
  furtherDays: ['0', '5'],
  validDays: ['30'],
  quantity: ['1', '2'],
  received: ['100'],
  receivedOn: ['2026-11-25'],
  until: ['2027-01-24'],
  to: ['2027-01-24', 'C4'],
  from: ['R12'],
  day: ['2026-12-24', '2027-03-02'],
  amount: ['48.00', '1.00'],
  price: ['48.00'],
  unitCost: ['0.45'],
  postage: ['4.20'],
  value: ['80.00', ''],
  weight: ['1250'],
  length: ['30'],
  width: ['20.5'],
  height: ['10'],
  diameter: ['0.1'],
  reading: ['78'],
  low: ['4.75'],
  high: ['5.25'],
  unit: ['V'],
  label: ['Voltage at rest'],
  divisor: ['5000'],
  step: ['500'],
  heaviest: ['20'],
  longest: ['100'],
  valueUpTo: ['500.00'],
  position: ['1', '2'],
  code: ['123456', 'SOC-9', 'L-9'],
  supplier: ['Gannet Parts'],
  term: ['6', 'P6M'],
  reorderAt: ['5'],
  initials: ['bt'],
  password: ['seven apples at low tide'],
  currentPassword: ['seven apples at low tide'],
  newPassword: ['nine pears in a tin boat'],
  source: ['Measured'],
  tracking: ['https://post.example.org/', ''],
  letters: ['0', '4'],
  extra: ['Case, strap', ''],
  otherAccessory: ['Strap', ''],
  taxRate: ['20'],
};
const SENTENCE = ['The tape squeals when it is warm.', 'One\nTwo'];

/** A field as somebody would send it who means well; `list` is the workshop's own, for a field that takes a file. */
export function filled(field: FoundField, list: string): fc.Arbitrary<Part[]> {
  const { name, kind, values } = field;
  const as = (value: string): Part[] => [{ name, value }];
  const [first = ''] = values;
  // The key by which a form sent twice is done once: a new visit has a new one.
  if (name === 'formKey') return fc.uuid().map(as);
  if (kind === 'fixed') return fc.constant(values.flatMap(as));
  if (kind === 'one') return fc.constantFrom(...values).map(as);
  if (kind === 'file') {
    return fc.oneof(
      { weight: 1, arbitrary: fc.constant<Part[]>([]) },
      { weight: 2, arbitrary: hostileFile(name, list) },
    );
  }
  if (kind === 'some') {
    return fc.oneof(
      { weight: 2, arbitrary: fc.constant(as(first)) },
      { weight: 1, arbitrary: fc.subarray(values).map((some) => some.flatMap(as)) },
    );
  }
  const typed = fc.constantFrom(...(TYPED[name] ?? SENTENCE)).map(as);
  return first === ''
    ? fc.oneof({ weight: 5, arbitrary: typed }, { weight: 1, arbitrary: fc.constant(as('')) })
    : fc.oneof({ weight: 4, arbitrary: fc.constant(as(first)) }, { weight: 1, arbitrary: typed });
}
