import { describe, expect, it } from 'vitest';
import { linePlaces } from '@/app/workshop/(inside)/price-lines/line-places';
import { type Tax, taxValue } from '@/app/workshop/(inside)/price-lines/taxes';
import { readLines } from '@/app/workshop/(inside)/quotes/[number]/price/read-lines';
import { startingPrice } from '@/app/workshop/(inside)/quotes/[number]/price/starting-price';
import { taxChoices } from '@/app/workshop/(inside)/quotes/[number]/tax-choices';
import { Refusal } from '@/lib/outcome';
import { blankWorkshop } from '@/lib/workshop/card';

const VAT: Tax = { category: 'S', rateBps: 2000 };
const REPAIR = {
  id: 'repair',
  name: 'USB-C socket replaced',
  modelName: 'Tideline HW-2',
  priceMinor: 7200,
  taxCategory: 'S' as const,
  taxRateBps: 2000,
  minutes: 60,
  workingDays: 5,
  policyName: 'Connector work',
};
const taxes = taxChoices([VAT], []);
const asked = { repair: REPAIR, takePrice: true, taxes, currency: 'GBP' };

function form(lines: Record<string, string>[]): FormData {
  const data = new FormData();
  for (let index = 0; index < linePlaces(lines); index += 1)
    for (const [name, text] of Object.entries({ kind: 'labour', tax: 'S2000', ...lines[index] }))
      data.set(`${name}-${index}`, text);
  return data;
}

function refusedAt(lines: Record<string, string>[]): string | undefined {
  try {
    readLines(form(lines), { ...asked, takePrice: false });
  } catch (error) {
    if (error instanceof Refusal) return error.field;
  }
  return undefined;
}

describe('the lines of a quote as they are typed', () => {
  it('take the only tax there is without being asked, as where a workshop charges none', () => {
    const exempt: Tax = { category: 'E', rateBps: 0 };
    const only = taxChoices([exempt], []);
    expect(only).toHaveLength(1);
    const data = form([{ description: 'Pads rebuilt', amount: '24.00' }]);
    for (let index = 0; index < linePlaces([]); index += 1) data.delete(`tax-${index}`);
    expect(readLines(data, { ...asked, takePrice: false, taxes: only })).toEqual([
      { kind: 'labour', description: 'Pads rebuilt', amount: 2400, ...exempt },
    ]);
  });

  it('come after the price of the catalogue, a discount as less, each with its tax', () => {
    const lines = readLines(
      form([
        { description: 'Pads rebuilt', amount: '24.00' },
        {},
        { kind: 'discount', description: 'Second unit', amount: '5' },
        { kind: 'postage', description: 'Stamps', amount: '3.10', tax: 'E0' },
      ]),
      asked,
    );
    expect(lines).toEqual([
      { kind: 'labour', description: 'USB-C socket replaced', amount: 7200, ...VAT },
      { kind: 'labour', description: 'Pads rebuilt', amount: 2400, ...VAT },
      { kind: 'discount', description: 'Second unit', amount: -500, ...VAT },
      { kind: 'postage', description: 'Stamps', amount: 310, category: 'E', rateBps: 0 },
    ]);
  });

  it('keep every one of a long price that is written anew', () => {
    const long = Array.from({ length: 11 }, (_, i) => ({ description: `Pad ${i + 1}`, amount: '4.00' }));
    expect(linePlaces(long)).toBeGreaterThan(long.length);
    expect(readLines(form(long), { ...asked, takePrice: false })).toHaveLength(long.length);
  });

  it.each([
    ['a text without an amount', [{ description: 'Pads rebuilt' }], 'amount-0'],
    ['an amount that is none', [{}, { description: 'Pads', amount: '24,0,0' }], 'amount-1'],
    ['an amount without a text', [{ amount: '24.00' }], 'description-0'],
    ['a kind that nobody writes', [{ kind: 'cover', description: 'Free', amount: '-9' }], 'kind-0'],
    ['a tax that is not offered', [{ description: 'Pads', amount: '24', tax: 'S100' }], 'tax-0'],
    ['no line at all', [], 'description-0'],
  ])('refuse %s at its field', (_, lines, field) => {
    expect(refusedAt(lines)).toBe(field);
  });
});

describe('the taxes of a line', () => {
  it('are those in use, those of the lines there are, and exempt, each once', () => {
    const reduced: Tax = { category: 'S', rateBps: 500 };
    expect(taxChoices([VAT], [reduced, VAT]).map(taxValue)).toEqual(['S2000', 'S500', 'E0']);
    expect(taxChoices([VAT], [{ category: 'E', rateBps: 0 }]).map(taxValue)).toEqual(['S2000', 'E0']);
  });
});

describe('what the form of a quote starts from', () => {
  const workshop = { ...blankWorkshop, inspectionFeeMinor: 1800 };

  it('is the price of the catalogue where nothing was sent, else the last price', () => {
    const none = startingPrice({ revisions: [] }, { workshop, isInspection: false, tax: VAT });
    expect(none).toMatchObject({ takePrice: true, lines: [] });
    const line = {
      kind: 'part',
      description: 'Socket',
      amountMinor: 480,
      taxCategory: 'S',
      taxRateBps: 2000,
    };
    const last = { isGross: true, reason: 'R', proposal: 'P', workingDays: 4, note: '', lines: [line] };
    const again = startingPrice(
      { revisions: [{ ...last, lines: [] }, last] },
      { workshop, isInspection: false, tax: VAT },
    );
    expect(again).toMatchObject({ takePrice: false, reason: 'R', workingDays: 4 });
    expect([again.isWorkedOver, again.lines.map(({ amount }) => amount)]).toEqual([false, [480]]);
    // 4.80 holds 0.80 of tax at 20 %: sent again, it comes to 4.80 and not to 5.76.
    const before = startingPrice(
      { revisions: [last] },
      { workshop: { ...workshop, pricesIncludeTax: false }, isInspection: false, tax: VAT },
    );
    expect([before.isWorkedOver, before.lines.map(({ amount }) => amount)]).toEqual([true, [400]]);
  });

  it.each([
    ['with tax', true, 1800],
    // 18.00 at 20 % holds 3.00 of tax.
    ['before tax', false, 1500],
  ])('is the fee alone for an inspection, where prices are kept %s', (_, pricesIncludeTax, amount) => {
    const start = startingPrice(
      { revisions: [] },
      {
        workshop: { ...workshop, pricesIncludeTax },
        isInspection: true,
        tax: VAT,
      },
    );
    expect(start.takePrice).toBe(false);
    expect(start.lines).toMatchObject([{ kind: 'inspection-fee', amount }]);
  });
});
