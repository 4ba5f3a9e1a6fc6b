import { describe, expect, test } from 'vitest';
import { day } from '@/lib/calendar/day';
import type { Paper } from '@/lib/invoices/rules/paper';
import { invoiceTotals } from '@/lib/invoices/rules/totals';
import { ublText } from '@/lib/invoices/rules/ubl';
import type { MoneyLine, TaxCategory } from '@/lib/money/tax';
import { brokenRules } from '@/tests/invoices/check-rules';
import { all, readXml, textAt } from '@/tests/invoices/read-xml';

// Figures of the example invoices published with eInvoicing-EN16931 (ubl/examples, "EN") and peppol-bis-invoice-3 ("Peppol").
// Where an example has an allowance or charge on the whole document, it is a line here; where its lines do not multiply
// out (EN example1, line 20), one line for each rate. Parties are ours.
type Example = {
  name: string;
  kind?: 'credit-note';
  lines: MoneyLine[];
  /** taxable amount, tax, category and percent */
  parts: string[];
  net: string;
  tax: string;
  gross: string;
  paid?: string;
  payable: string;
};

const line = (amount: number, percent: number, category: TaxCategory = 'S'): MoneyLine => ({
  amount,
  category,
  rateBps: percent * 100,
});

const examples: Example[] = [
  {
    name: 'Peppol base-example',
    lines: [line(280000, 25), line(-150000, 25), line(2500, 25)],
    parts: ['1325.00 331.25 S 25'],
    net: '1325.00',
    tax: '331.25',
    gross: '1656.25',
    payable: '1656.25',
  },
  {
    name: 'Peppol Allowance-example',
    lines: [line(400000, 25), line(100000, 0, 'E'), line(90000, 25), line(-20000, 25), line(20000, 25)],
    parts: ['4900.00 1225.00 S 25', '1000.00 0.00 E 0'],
    net: '5900.00',
    tax: '1225.00',
    gross: '7125.00',
    paid: '1000.00',
    payable: '6125.00',
  },
  {
    name: 'EN ubl-tc434-example2: 365.125 is 365.13',
    lines: [line(146050, 25), line(-10000, 25), line(10000, 25), line(100, 15), line(-2500, 0, 'E')],
    parts: ['1460.50 365.13 S 25', '1.00 0.15 S 15', '-25.00 0.00 E 0'],
    net: '1436.50',
    tax: '365.28',
    gross: '1801.78',
    paid: '1000.00',
    payable: '801.78',
  },
  {
    name: 'EN ubl-tc434-example8',
    lines: [14080, 1616, 16764, 8874, 3675, 5650, 8334, 19031, 6421, 6446].map((amount) => line(amount, 21)),
    parts: ['908.91 190.87 S 21'],
    net: '908.91',
    tax: '190.87',
    gross: '1099.78',
    payable: '1099.78',
  },
  {
    name: 'EN ubl-tc434-example1',
    lines: [line(18323, 6), line(4637, 21)],
    parts: ['46.37 9.74 S 21', '183.23 10.99 S 6'],
    net: '229.60',
    tax: '20.73',
    gross: '250.33',
    payable: '250.33',
  },
  {
    name: 'EN ubl-tc434-example5',
    lines: [line(100000, 25), line(50000, 25), line(250000, 12), line(-15000, 25), line(15000, 25)],
    parts: ['1500.00 375.00 S 25', '2500.00 300.00 S 12'],
    net: '4000.00',
    tax: '675.00',
    gross: '4675.00',
    paid: '2337.50',
    payable: '2337.50',
  },
  {
    name: 'EN ubl-tc434-example9',
    lines: [line(14700, 21)],
    parts: ['147.00 30.87 S 21'],
    net: '147.00',
    tax: '30.87',
    gross: '177.87',
    payable: '177.87',
  },
  {
    name: 'EN ubl-tc434-creditnote1',
    kind: 'credit-note',
    lines: [line(10011, 0, 'E')],
    parts: ['100.11 0.00 E 0'],
    net: '100.11',
    tax: '0.00',
    gross: '100.11',
    payable: '100.11',
  },
];

const address = { addressLines: [], postcode: 'QM1 4QA', town: 'Sandmouth', country: 'GB', email: '' };

function xmlOf(o: Example): string {
  const sums = invoiceTotals(
    o.lines.map((each) => ({ ...each, description: 'Work' })),
    false,
  );
  const paper: Paper = {
    kind: o.kind ?? 'invoice',
    number: '2026-00001',
    corrects: o.kind ? { number: '2026-00001', issuedOn: day('2026-11-25') } : null,
    reason: '',
    currency: 'EUR',
    issuedOn: day('2026-11-25'),
    suppliedOn: day('2026-11-25'),
    dueOn: day('2026-12-09'),
    seller: {
      ...address,
      name: 'Quay & Alder',
      phone: '',
      taxNumber: 'GB000000000',
      taxName: 'VAT',
      taxExemptReason: 'Exempt',
      bankHolder: '',
      iban: '',
      bic: '',
    },
    buyer: { ...address, name: 'Maren Holt' },
    prepaid: Number((o.paid ?? '0').replace('.', '')),
    ...sums,
  };
  return ublText(paper);
}

describe('the structured form has the figures of the published examples', () => {
  test.each(examples)('$name', (example) => {
    const root = readXml(xmlOf(example));
    const total = (name: string) => textAt(root, `LegalMonetaryTotal/${name}`);
    expect(total('LineExtensionAmount')).toBe(example.net);
    expect(total('TaxExclusiveAmount')).toBe(example.net);
    expect(total('TaxInclusiveAmount')).toBe(example.gross);
    expect(total('PrepaidAmount')).toBe(example.paid ?? null);
    expect(total('PayableRoundingAmount')).toBeNull();
    expect(total('PayableAmount')).toBe(example.payable);
    expect(textAt(root, 'TaxTotal/TaxAmount')).toBe(example.tax);
    const parts = all(root, 'TaxTotal/TaxSubtotal').map((part) =>
      ['TaxableAmount', 'TaxAmount', 'TaxCategory/ID', 'TaxCategory/Percent']
        .map((path) => textAt(part, path))
        .join(' '),
    );
    expect(parts).toEqual(example.parts);
    expect(brokenRules(root, 2)).toEqual([]);
  });
});
