import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from '@/lib/calendar/day';
import { creditTotals } from '@/lib/invoices/rules/credit';
import type { Paper } from '@/lib/invoices/rules/paper';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { ublProblems, ublText } from '@/lib/invoices/rules/ubl';
import type { MoneyLine } from '@/lib/money/tax';
import { brokenRules } from './check-rules';
import { all, readXml, textAt } from './read-xml';

const parties: Pick<Paper, 'seller' | 'buyer'> = {
  seller: {
    name: 'Quay & Alder',
    addressLines: ['4 Slip Lane'],
    postcode: 'QM1 4QA',
    town: 'Sandmouth',
    country: 'GB',
    email: 'bench@quayandalder.example.org',
    phone: '01632 960101',
    taxNumber: 'GB 000 0000 00',
    taxName: 'VAT',
    taxExemptReason: 'Exempt under group 14',
    bankHolder: '',
    iban: 'GB33BUKB20201555555555',
    bic: '',
  },
  buyer: {
    name: 'Maren <Holt>',
    addressLines: ['12 Chandler Row', 'Flat "B"', 'Old Town'],
    postcode: 'QM2 7HB',
    town: 'Sandmouth',
    country: 'GB',
    email: 'maren.holt@example.org',
  },
};
const DATES = {
  issuedOn: day('2026-11-25'),
  suppliedOn: day('2026-11-24'),
  dueOn: day('2026-12-09'),
};

type Sums = Pick<Paper, 'net' | 'tax' | 'rounding' | 'payable' | 'breakdown'> & {
  lines: readonly (MoneyLine & { net: number })[];
};

function paperOf(sums: Sums, over: Partial<Paper> = {}): Paper {
  return {
    kind: 'invoice',
    number: '2026-00001',
    corrects: null,
    reason: '',
    currency: 'EUR',
    prepaid: 0,
    ...DATES,
    ...parties,
    ...sums,
    lines: sums.lines.map((line, place) => ({ ...line, description: `Line ${place + 1}` })),
    ...over,
  };
}

const line = fc
  .record({
    amount: fc.integer({ min: -200_000, max: 900_000 }),
    taxed: fc.constantFrom(
      { category: 'S' as const, rateBps: 2000 },
      { category: 'S' as const, rateBps: 550 },
      { category: 'S' as const, rateBps: 2525 },
      { category: 'Z' as const, rateBps: 0 },
      { category: 'E' as const, rateBps: 0 },
    ),
  })
  .map(({ amount, taxed }) => ({ amount, ...taxed }));
const lineSet = fc.array(line, { minLength: 1, maxLength: 8 });
const currency = fc.constantFrom(
  { code: 'EUR', decimals: 2 } as const,
  { code: 'JPY', decimals: 0 } as const,
);

/** What XML 1.0 can hold (production 2 of the recommendation). */
function isSpeakable(character: string): boolean {
  const code = character.codePointAt(0) ?? 0;
  if (code < 0x20) return [0x9, 0xa, 0xd].includes(code);
  return code < 0xd800 || (code > 0xdfff && code !== 0xfffe && code !== 0xffff);
}

describe('the structured form', () => {
  it('keeps the published rules for every set of lines, with tax or without, with and without decimals', () => {
    fc.assert(
      fc.property(
        lineSet,
        fc.boolean(),
        currency,
        fc.nat(100_000),
        (lines, isGross, { code, decimals }, paid) => {
          const sums = invoiceTotals(lines, isGross);
          const prepaid = Math.min(paid, Math.max(0, sums.payable));
          const paper = paperOf(sums, { currency: code, prepaid });
          expect(brokenRules(readXml(ublText(paper)), decimals)).toEqual([]);
        },
      ),
      { numRuns: 400 },
    );
  });

  it('keeps them for credit notes over any part of an invoice, which never come to more than it', () => {
    let notes = 0;
    fc.assert(
      fc.property(
        lineSet,
        fc.boolean(),
        currency,
        fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 8, maxLength: 8 }), { maxLength: 5 }),
        (lines, isGross, { code, decimals }, rounds) => {
          const sums = invoiceTotals(
            lines.map((each, position) => ({ ...each, position })),
            isGross,
          );
          fc.pre(sums.payable > 0);
          const invoice = { ...sums, isGross };
          const credits: (typeof sums)[] = [];
          for (const quarters of rounds) {
            const chosen = new Map(
              sums.lines.map((each, place) => [
                each.position,
                Math.trunc((each.amount * (quarters[place] ?? 0)) / 4),
              ]),
            );
            const credit = creditTotals(invoice, credits, chosen);
            if (!credit.ok) continue;
            notes += 1;
            credits.push(credit.totals);
            const paper = paperOf(credit.totals, {
              kind: 'credit-note',
              number: '2026-00002',
              currency: code,
              reason: 'Given back',
              corrects: { number: '2026-00001', issuedOn: DATES.issuedOn },
            });
            expect(brokenRules(readXml(ublText(paper)), decimals)).toEqual([]);
            expect(Math.abs(credit.totals.rounding)).toBeLessThanOrEqual(6 * 8);
          }
          const given = credits.reduce((all, each) => all + each.payable, 0);
          expect(given).toBeLessThanOrEqual(sums.payable);
        },
      ),
      { numRuns: 400 },
    );
    expect(notes).toBeGreaterThan(150);
  });

  it('gives the rest back to the cent, however the first part was chosen', () => {
    fc.assert(
      fc.property(lineSet, fc.boolean(), fc.integer({ min: 0, max: 100 }), (lines, isGross, percent) => {
        const sums = invoiceTotals(
          lines.map((each, position) => ({ ...each, position })),
          isGross,
        );
        fc.pre(sums.payable > 0);
        const invoice = { ...sums, isGross };
        const part = (share: number) =>
          new Map(sums.lines.map((each) => [each.position, Math.trunc((each.amount * share) / 100)]));
        const first = creditTotals(invoice, [], part(percent));
        const before = first.ok ? [first.totals] : [];
        const left = new Map(
          sums.lines.map((each) => [
            each.position,
            each.amount - (first.ok ? (part(percent).get(each.position) ?? 0) : 0),
          ]),
        );
        const rest = creditTotals(invoice, before, left);
        const given = [...before, ...(rest.ok ? [rest.totals] : [])].reduce(
          (all, each) => all + each.payable,
          0,
        );
        expect(given).toBe(sums.payable);
      }),
      { numRuns: 400 },
    );
  });

  it('is well formed and loses nothing whatever people typed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (typed) => {
        const sums = invoiceTotals([{ amount: 7200, category: 'S', rateBps: 2000 }], true);
        const paper = paperOf(sums, { buyer: { ...parties.buyer, name: `x${typed}x` } });
        const root = readXml(ublText(paper));
        const held = [...typed].filter(isSpeakable).join('');
        expect(textAt(root, 'AccountingCustomerParty/Party/PartyLegalEntity/RegistrationName')).toBe(
          `x${held}x`,
        );
      }),
    );
  });

  it('says a discount as minus one at a positive price (BR-27)', () => {
    const sums = invoiceTotals(
      [
        { amount: 7200, category: 'S', rateBps: 2000 },
        { amount: -600, category: 'S', rateBps: 2000 },
      ],
      true,
    );
    const [, discount] = all(readXml(ublText(paperOf(sums))), 'InvoiceLine');
    if (!discount) throw new Error('no second line');
    expect(textAt(discount, 'InvoicedQuantity')).toBe('-1');
    expect(textAt(discount, 'Price/PriceAmount')).toBe('5.00');
    expect(textAt(discount, 'LineExtensionAmount')).toBe('-5.00');
  });

  it('names both parties, the account, and the invoice that a credit note corrects', () => {
    const sums = invoiceTotals([{ amount: 7200, category: 'S', rateBps: 2000 }], true);
    const root = readXml(ublText(paperOf(sums)));
    expect(textAt(root, 'AccountingSupplierParty/Party/PartyTaxScheme/CompanyID')).toBe('GB000000000');
    expect(textAt(root, 'PaymentMeans/PayeeFinancialAccount/ID')).toBe('GB33BUKB20201555555555');
    expect(textAt(root, 'PaymentMeans/PaymentID')).toMatch(/^RF\d\d202600001$/);
    expect(textAt(root, 'Delivery/ActualDeliveryDate')).toBe('2026-11-24');
    // BT-72 is optional (0..1): before the work is done nobody knows the day.
    const early = readXml(ublText(paperOf(sums, { suppliedOn: null })));
    expect(all(early, 'Delivery')).toEqual([]);
    expect(brokenRules(early, 2)).toEqual([]);
    const credit = readXml(
      ublText(
        paperOf(sums, {
          kind: 'credit-note',
          corrects: { number: '2026-00001', issuedOn: DATES.issuedOn },
          reason: 'Given back',
        }),
      ),
    );
    expect(credit.name).toBe('CreditNote');
    expect(textAt(credit, 'BillingReference/InvoiceDocumentReference/ID')).toBe('2026-00001');
    expect(textAt(credit, 'DueDate')).toBeNull();
  });

  it('is not written where the norm cannot hold it, and says why', () => {
    const of = (lines: MoneyLine[], over: Partial<Paper> = {}) =>
      ublProblems(paperOf(invoiceTotals(lines, true), over));
    const s: MoneyLine = { amount: 7200, category: 'S', rateBps: 2000 };
    const o: MoneyLine = { amount: 500, category: 'O', rateBps: 0 };
    const e: MoneyLine = { amount: 500, category: 'E', rateBps: 0 };
    const without = (over: Partial<Paper['seller']>) => ({ seller: { ...parties.seller, ...over } });
    expect(of([s])).toEqual([]);
    expect(of([s], { currency: 'KWD' })).toEqual(['decimals']);
    expect(of([s, o])).toEqual(['mixed-outside']);
    expect(of([{ ...s, rateBps: 0 }])).toEqual(['no-rate']);
    expect(of([s], without({ taxNumber: '' }))).toEqual(['no-tax-number']);
    expect(of([e], without({ taxExemptReason: ' ' }))).toEqual(['no-exempt-reason']);
    expect(of([s], without({ country: 'UK' }))).toEqual(['no-country']);
    expect(() => ublText(paperOf(invoiceTotals([s, o], true)))).toThrow('mixed-outside');
    const outside = readXml(ublText(paperOf(invoiceTotals([o], true))));
    expect(brokenRules(outside, 2)).toEqual([]);
  });
});

describe('the checker of the rules', () => {
  const sums = invoiceTotals([{ amount: 7201, category: 'S', rateBps: 2000 }], true);
  const xml = ublText(paperOf(sums, { prepaid: 1000 }));

  it('finds nothing in a sound document, and each figure when it is wrong by a cent', () => {
    expect(brokenRules(readXml(xml), 2)).toEqual([]);
    const figures: [string, string][] = [
      ['LineExtensionAmount', 'BR-CO-10'],
      ['TaxExclusiveAmount', 'BR-CO-13'],
      ['TaxInclusiveAmount', 'BR-CO-15'],
      ['PrepaidAmount', 'BR-CO-16'],
      ['PayableAmount', 'BR-CO-16'],
      ['TaxableAmount', 'BR-S/Z/E/O-08'],
      ['TaxAmount', 'BR-CO-14'],
    ];
    for (const [name, rule] of figures) {
      const spoilt = xml.replace(
        new RegExp(`(<cbc:${name} currencyID="EUR">)(\\d+)\\.(\\d\\d)`),
        (_, tag: string, whole: string, cents: string) =>
          `${tag}${whole}.${String((Number(cents) + 1) % 100).padStart(2, '0')}`,
      );
      expect(spoilt).not.toBe(xml);
      expect(brokenRules(readXml(spoilt), 2), name).toContain(rule);
    }
  });
});
