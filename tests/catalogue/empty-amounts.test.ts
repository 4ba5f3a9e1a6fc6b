import { describe, expect, it } from 'vitest';
import { repairSchema } from '@/app/workshop/(inside)/catalogue/repair-schema';
import { correctLotSchema } from '@/app/workshop/(inside)/parts/part-schema';
import { carrierSchema } from '@/app/workshop/(inside)/settings/carriers/carrier-schema';

type Schema = {
  safeParse: (sent: unknown) => {
    error?: { issues: { path: PropertyKey[]; message: string }[] } | undefined;
  };
};

const said = (schema: Schema, name: string, value: string | undefined) =>
  schema
    .safeParse({ [name]: value })
    .error?.issues.filter(({ path }) => path[0] === name)
    .map(({ message }) => message);

describe.each([
  ['valueUpTo', carrierSchema('GBP'), 'Enter an amount, 0 for none', 'Enter an amount, like 12.50'],
  ['unitCost', correctLotSchema('GBP'), 'Enter what one piece cost', 'Enter an amount, like 12.50'],
  ['price', repairSchema('GBP'), 'Enter the price', 'Enter an amount, like 12.50'],
  [
    'taxRate',
    repairSchema('GBP'),
    'Enter the rate in percent, 0 for none',
    'Enter the rate in percent, like 20 or 5.5',
  ],
] as [string, Schema, string, string][])('%s', (name, schema, missing, wrong) => {
  it.each([undefined, '', '  '])('left empty, as %o, says what to enter', (value) => {
    expect(said(schema, name, value)).toEqual([missing]);
  });

  it('says how it is written where it was written otherwise', () => {
    expect(said(schema, name, 'a lot')).toEqual([wrong]);
  });

  it('takes nought', () => {
    expect(said(schema, name, '0')).toEqual([]);
  });
});
