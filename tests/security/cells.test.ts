import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderCsv } from '@/lib/bench/order-records';
import { day } from '@/lib/calendar/day';
import { guardText, openText } from '@/lib/catalogue/rules/list-cells';
import { journalRows } from '@/lib/invoices/rules/journal';

// OWASP ASVS 5.0, 1.2.10 names =, +, -, @ and tab; line ends and the full-width forms from memory.
const runs = /^[=+\-@\t\r\n＝＋－＠]/u;
const formulas = [
  '=1+1',
  '+1',
  '-1+1',
  '@SUM(1)',
  '\t=1',
  '\r=1',
  '＝1+1',
  '=HYPERLINK("http://elsewhere.example.org")',
  "'=1",
];
const text = fc.oneof(
  fc.constantFrom(...formulas),
  fc.string({ unit: 'binary' }),
  fc.tuple(fc.constantFrom("'", '=', '-', '＠', ' '), fc.string()).map((pair) => pair.join('')),
);

test('no guarded text is a formula, and opening it gives back exactly what was there', () => {
  fc.assert(
    fc.property(text, (typed) => {
      expect(guardText(typed)).not.toMatch(runs);
      expect(openText(guardText(typed))).toBe(typed);
    }),
  );
});

test('no name or reference runs in the journal', () => {
  fc.assert(
    fc.property(text, text, (customer, reference) => {
      const payment = {
        on: day('2026-11-25'),
        enteredOn: day('2026-11-25'),
        job: 'J7K2M4PX3',
        customer,
        currency: 'GBP',
        amount: 100,
        purpose: 'price',
        method: 'card',
        reference,
      };
      const paper = {
        kind: 'invoice',
        number: '2026-00001',
        corrects: null,
        on: day('2026-11-25'),
        job: 'J7K2M4PX3',
        customer,
        currency: 'GBP',
        breakdown: [],
        rounding: 1,
      } as const;
      for (const cell of journalRows([paper], [payment]).flat()) expect(cell).not.toMatch(runs);
    }),
  );
});

test('no part, code or supplier runs in the order', () => {
  fc.assert(
    fc.property(text, text, text, (code, name, supplier) => {
      const row = {
        id: 'a',
        code,
        name,
        supplier,
        order: 1,
        inStock: 0,
        onOrder: 0,
        needed: 1,
        left: 0,
        reorderAt: 1,
        unitCostMinor: null,
      };
      const rows: string[][] = parse(orderCsv([row]), { bom: true, record_delimiter: '\r\n' });
      expect(rows).toHaveLength(2);
      for (const cell of rows.flat()) expect(cell).not.toMatch(runs);
    }),
  );
});
