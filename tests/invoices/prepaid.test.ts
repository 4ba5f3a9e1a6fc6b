import { describe, expect, it } from 'vitest';
import { prepaidOf } from '@/lib/invoices/rules/prepaid';

const invoice = (payable: number) => ({ kind: 'invoice', payable });
const creditNote = (payable: number) => ({ kind: 'credit-note', payable });

// EN 16931 BT-113; amounts worked out by hand.
describe('what was received for an invoice before it was issued', () => {
  it.each([
    ['is what was paid, on a first invoice', 7200, 2000, [], 2000],
    [
      'is free again once the invoice it was for is credited',
      9600,
      7200,
      [invoice(7200), creditNote(7200)],
      7200,
    ],
    ['is no more than what is payable', 7200, 9000, [], 7200],
    ['is not less than nothing', 2000, 0, [invoice(7200), creditNote(1000)], 0],
    ['is not counted twice', 2000, 7200, [invoice(7200)], 0],
    ['is what the earlier invoice left of it', 2000, 8000, [invoice(7200)], 800],
  ])('%s', (_, payable, received, earlier, expected) => {
    expect(prepaidOf({ payable, received, earlier })).toBe(expected);
  });
});
