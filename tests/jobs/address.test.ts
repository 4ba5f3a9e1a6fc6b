import { describe, expect, it } from 'vitest';
import { addressAnswers, addressFieldsOf, addressLinesOf, customerAnswers } from '@/lib/jobs/rules/address';

const FILLED = {
  name: 'Bryn Tolliver',
  email: 'bryn@example.net',
  address1: '4 Sail Loft',
  postcode: 'QM3 4ZZ',
  town: 'Sandmouth',
  country: 'GB',
};
const missing = (schema: typeof addressAnswers) => (field: keyof typeof FILLED) => {
  const { [field]: _, ...rest } = FILLED;
  return schema.safeParse(rest).error?.issues.map(({ message }) => message);
};

describe('what is missing of an address is named', () => {
  it.each([
    ['name', 'Enter your name', 'Enter the customer’s name'],
    ['email', 'Enter your e-mail address', 'Enter the customer’s e-mail address'],
    ['address1', 'Enter the first line of your address', 'Enter the first line of the address'],
    ['postcode', 'Enter your postcode', 'Enter the postcode'],
    ['town', 'Enter your town', 'Enter the town'],
    ['country', 'Choose your country', 'Choose the country'],
  ] as const)('%s', (field, toCustomer, toStaff) => {
    expect(missing(addressAnswers)(field)).toEqual([toCustomer]);
    expect(missing(customerAnswers)(field)).toEqual([toStaff]);
  });

  it('what may be left out is empty', () => {
    expect(addressAnswers.parse(FILLED)).toEqual({ ...FILLED, phone: '', address2: '' });
  });
});

it.each([
  [{ address1: '4 Sail Loft', address2: '' }, ['4 Sail Loft']],
  [{ address1: '4 Sail Loft', address2: 'Rope Walk' }, ['4 Sail Loft', 'Rope Walk']],
])('%j is kept as lines, and is the same two fields again', (fields, lines) => {
  expect(addressLinesOf(fields)).toEqual(lines);
  expect(addressFieldsOf(lines)).toEqual(fields);
});

it('lines that a form has no field for share the second', () => {
  expect(addressFieldsOf(['The Net Loft', 'Back door', 'Old Town'])).toEqual({
    address1: 'The Net Loft',
    address2: 'Back door, Old Town',
  });
  expect(addressFieldsOf([])).toEqual({ address1: '', address2: '' });
});
